// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

/**
 * A needle that crosses the image plane: one bright dot with a tail of repetitions below it.
 *
 * @param crossing where it crosses
 * @param punctureDistanceMm on the skin, from puncture to the plane
 * @param diameterMm outer; also the spacing of the repetitions
 */
public record CrossingNeedle(ScanPoint crossing, double punctureDistanceMm, double diameterMm) implements NeedlePose {
    public double angleToSkinDeg() {
        return Math.toDegrees(StrictMath.atan2(crossing.depthMm(), punctureDistanceMm));
    }

    @Override
    public ScanPoint end() {
        return crossing;
    }

    /** Steeper or flatter hands move the dot up and down, along the beam. */
    @Override
    public CrossingNeedle withdrawn(double byMm) {
        return new CrossingNeedle(crossing.plus(0, -byMm), punctureDistanceMm, diameterMm);
    }

    /** A dot is there until nothing is left. */
    @Override
    public CrossingNeedle lostFromItsFarEnd(double left) {
        return this;
    }

    @Override
    public Structure echo(Transducer transducer) {
        return new DotEcho(crossing, diameterMm);
    }

    /** The dot, its tail and its narrow shadow. */
    record DotEcho(ScanPoint place, double spacingMm) implements Structure {
        private static final double STRENGTH = 3.2;
        private static final double HALF_WIDTH_MM = 0.17;
        private static final int REPEATS = 9;
        private static final double SHADOW_LOSS = 5;

        @Override
        public Box bounds() {
            return new Box(
                    place.acrossMm() - 2.5,
                    place.acrossMm() + 2.5,
                    place.depthMm() - 1,
                    place.depthMm() + (REPEATS + 1) * spacingMm);
        }

        @Override
        public void paint(Cell cell) {
            double beside = cell.across - place.acrossMm();
            double below = cell.depth - place.depthMm();
            double level = STRENGTH;
            for (int k = 0; k <= REPEATS; k++) {
                double width = HALF_WIDTH_MM * (1 + 0.03 * k);
                cell.mirror += level * Cell.bell(beside, width) * Cell.bell(below - k * spacingMm, 0.085);
                level *= k == 0 ? 0.12 : 0.6;
            }
            double tail = Cell.step(below, 0, 0.4) * Cell.step(REPEATS * spacingMm - below, 0, 4);
            cell.cover(-23 - 1.6 * below, 0.75 * tail * Cell.bell(beside, 0.25));
            cell.loss += SHADOW_LOSS * Cell.bell(below - 0.3, 0.3) * Cell.bell(beside, 0.35);
        }
    }
}
