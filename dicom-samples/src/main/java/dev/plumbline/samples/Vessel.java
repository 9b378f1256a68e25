// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

/**
 * A vessel cut across: black inside, brighter behind because blood takes little from the beam, walls bright where they
 * lie square to it.
 *
 * @param acrossMm half the width
 * @param downMm half the height; a pressed vein is low and wide
 */
record Vessel(ScanPoint center, double acrossMm, double downMm, Wall wall) implements Structure {
    private static final double BLOOD_DB = -63;
    private static final double BLOOD_LOSS = 0.12;
    private static final double EDGE_LOSS = 1.6;
    private static final double HAZE_MM = 1.1;
    private static final Texture ROUNDNESS = new Texture(new SampleRandom(11));

    /** The wall: {@code mirror} is the amplitude of its reflection where it lies square to the beam. */
    record Wall(double thicknessMm, double level, double mirror) {
        static final Wall ARTERY = new Wall(0.42, -26, 0.06);
        static final Wall VEIN = new Wall(0.22, -30, 0.03);
    }

    @Override
    public Box bounds() {
        return Box.round(center, acrossMm + 1.5, downMm + 1.5);
    }

    @Override
    public void paint(Cell cell) {
        double x = (cell.across - center.acrossMm()) / acrossMm;
        double y = (cell.depth - center.depthMm()) / downMm;
        double q = Math.sqrt(x * x + y * y);
        double sine = q == 0 ? 0 : y / q;
        double cosine = q == 0 ? 1 : x / q;
        double uneven = 0.045 * ROUNDNESS.at(1.3 * cosine + center.depthMm(), 1.3 * sine);
        double outside = (q - 1 - uneven) * Math.min(acrossMm, downMm);
        if (outside > wall.thicknessMm + 0.3) {
            return;
        }
        double square = sine * sine;
        double thickness = Math.min(wall.thicknessMm, 0.16 * Math.min(acrossMm, downMm));
        double inWall = Cell.bell(outside - thickness / 2, thickness / 2);
        cell.cover(wall.level - 11 * (1 - square), inWall);
        double blood = Cell.step(-outside, -0.1, 0.14);
        double haze = sine < 0 ? 11 * Cell.bell(outside, HAZE_MM) * square : 0;
        cell.mirror *= 1 - blood;
        cell.cover(BLOOD_DB + haze, blood);
        cell.damp(BLOOD_LOSS, blood);
        cell.mirror += wall.mirror * square * square * square * Cell.bell(outside, 0.07);
        cell.loss += EDGE_LOSS * Cell.bell(outside, 0.25) * Cell.bell(y, 0.3);
    }
}
