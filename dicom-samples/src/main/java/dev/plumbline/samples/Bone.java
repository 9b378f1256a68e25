// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

/**
 * The near surface of a bone: a bright line and nothing but shadow and faint repetition below.
 *
 * @param from left end, millimetres from the face's middle
 * @param to right end
 */
record Bone(Border surface, double from, double to, Texture relief) implements Structure {
    private static final double SHADOW_LOSS = 8;
    private static final double SHADOW_STARTS_MM = 0.5;
    private static final double STRENGTH = 0.5;

    @Override
    public Box bounds() {
        return new Box(from - 1, to + 1, surface.highest() - 0.6, 1e6);
    }

    @Override
    public void paint(Cell cell) {
        double edge = Cell.step(Math.min(cell.across - from, to - cell.across), -0.3, 0.6);
        double below = cell.depth - surface.at(cell.across);
        if (below < -0.6 || edge == 0) {
            return;
        }
        double patch = 0.6 + 0.4 * relief.at(cell.across / 1.6, 1);
        cell.mirror += STRENGTH * edge * patch * Cell.bell(below, 0.08 + 0.22 * Math.abs(surface.slope(cell.across)));
        cell.cover(-12, edge * patch * Cell.bell(below, 0.22));
        double inside = edge * Cell.step(below, 0.1, SHADOW_STARTS_MM);
        cell.mirror *= 1 - inside * Cell.step(below, 0.5, 0.9);
        cell.cover(-46, inside);
        cell.damp(SHADOW_LOSS, inside);
    }
}
