// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

/**
 * The pleural line: bright, and below it air, which shows repetitions of what lies above instead of tissue (equally
 * spaced paler lines and short comet tails).
 */
record Pleura(Border surface, double repeatMm, Texture relief) implements Structure {
    private static final double STRENGTH = 1.0;

    @Override
    public Box bounds() {
        return Box.EVERYWHERE;
    }

    @Override
    public void paint(Cell cell) {
        double below = cell.depth - surface.at(cell.across);
        if (below < -0.6) {
            return;
        }
        double patch = 0.75 + 0.25 * relief.at(cell.across / 2);
        cell.mirror += STRENGTH * patch * Cell.bell(below, 0.09);
        double air = Cell.step(below, 0.05, 0.5);
        double haze = -44 - 0.9 * below + 4 * relief.at(cell.across / 0.8, below / 1.5);
        cell.cover(Math.max(haze, -80), air);
        cell.damp(0.9, air);
        double repeated = below - repeatMm;
        cell.mirror += 0.12 * patch * Cell.bell(repeated, 0.2);
        double comet = Cell.step(relief.at(cell.across / 0.7, 5), 0.55, 0.9);
        cell.cover(-22 - 1.6 * below, 0.8 * comet * air * Cell.step(9 - below, 0, 5));
    }
}
