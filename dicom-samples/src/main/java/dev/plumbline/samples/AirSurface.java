// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

/**
 * Where tissue ends and air begins, as at the pleura or a loop of bowel: a bright line, and below it no tissue but
 * repetitions of what lies above (paler lines at equal distances, short comet tails) in a dirty shadow.
 */
record AirSurface(Border surface, Air air, Texture relief) implements Structure {
    /**
     * What the air looks like.
     *
     * @param line amplitude of the surface's reflection
     * @param patchiness 0 for an even line, 1 for one that comes and goes
     * @param repeatMm distance at which the line is repeated below itself
     */
    record Air(double line, double patchiness, double repeatMm) {
        static final Air UNDER_PLEURA = new Air(0.8, 0.35, 10.5);
        static final Air IN_BOWEL = new Air(0.4, 0.95, 60);
    }

    static AirSurface of(Border surface, Air air, SampleRandom random) {
        return new AirSurface(surface, air, new Texture(random));
    }

    @Override
    public Box bounds() {
        return Box.between(surface.highest() - 0.6, 1e6);
    }

    @Override
    public void paint(Cell cell) {
        double below = cell.depth - surface.at(cell.across);
        if (below < -0.6) {
            return;
        }
        double patch = 1 - air.patchiness * (0.5 + 0.5 * relief.at(cell.across / 2.4, 1));
        cell.mirror += air.line * patch * Cell.bell(below, 0.09);
        cell.cover(-20, 0.7 * patch * Cell.bell(below - 0.15, 0.3));
        double inAir = Cell.step(below, 0.05, 0.5);
        double haze = -42 - 1.1 * below + 4 * relief.at(cell.across / 0.9, below / 1.5);
        cell.cover(haze, inAir);
        cell.damp(0.9, inAir);
        double repeated = Cell.bell(below - air.repeatMm, 0.16);
        cell.mirror += 0.02 * patch * repeated;
        cell.cover(-33, 0.8 * patch * repeated);
        double comet = Cell.step(relief.at(cell.across / 0.6, 5), 0.35, 1);
        cell.cover(-30 - 1.9 * below, 0.7 * comet * inAir * Cell.step(8 - below, 0, 6));
    }
}
