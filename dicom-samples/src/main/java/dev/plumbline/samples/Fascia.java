// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

/**
 * A thin bright sheet seen edge-on, patchy, with a weaker companion line where it is doubled.
 *
 * @param level of its scatter, dB
 * @param relief patchiness along the sheet
 */
record Fascia(Border border, double level, Texture relief) implements Structure {
    private static final double THICKNESS_MM = 0.13;
    private static final double HALO_MM = 0.4;

    static Fascia along(Border border, double level, SampleRandom random) {
        return new Fascia(border, level, new Texture(random));
    }

    @Override
    public Box bounds() {
        return Box.between(border.highest() - 1.2, border.lowest() + 1.7);
    }

    @Override
    public void paint(Cell cell) {
        double below = cell.layer - border.at(cell.across);
        if (below < -1.2 || below > 1.7) {
            return;
        }
        double steep = border.slope(cell.across);
        double facing = 1 / (1 + 2 * steep * steep);
        double patch = 0.5 + 0.5 * relief.at(cell.across / 2.6, 3);
        double fine = relief.at(cell.across / 0.7, 11);
        double strength = level - 9 * (1 - patch) - 9 * (1 - facing) + 3 * fine;
        cell.cover(level - 14, 0.55 * facing * Cell.bell(below - 0.15, HALO_MM));
        cell.cover(strength, 0.95 * Cell.bell(below, THICKNESS_MM));
        cell.mirror += 0.35 * facing * Decibels.amplitude(level + 6) * patch * Cell.bell(below, 0.07);
        double doubled = Math.max(0, relief.at(cell.across / 5, 9));
        cell.cover(level - 7, doubled * Cell.bell(below - 0.55 - 0.15 * fine, 0.11));
    }
}
