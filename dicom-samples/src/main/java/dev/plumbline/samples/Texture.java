// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

/** Smooth random relief over the plane: the irregularity of tissue that stays the same from frame to frame. */
final class Texture {
    private static final double UNIT = 0x1.0p-31;

    private final long seed;

    Texture(SampleRandom random) {
        this.seed = random.bits();
    }

    /** Value in about [-1, 1] at a place given in units of the relief's own grain. */
    double at(double across, double along) {
        long column = (long) Math.floor(across);
        long row = (long) Math.floor(along);
        double s = smooth(across - column);
        double t = smooth(along - row);
        double top = mix(knot(column, row), knot(column + 1, row), s);
        double bottom = mix(knot(column, row + 1), knot(column + 1, row + 1), s);
        return mix(top, bottom, t);
    }

    /** The same along a line. */
    double at(double across) {
        long column = (long) Math.floor(across);
        return mix(knot(column, 0), knot(column + 1, 0), smooth(across - column));
    }

    private double knot(long column, long row) {
        long hash = SampleRandom.mix(seed + column * 0x9e3779b97f4a7c15L + row * 0xc2b2ae3d27d4eb4fL);
        return (int) (hash >>> 32) * UNIT;
    }

    private static double smooth(double t) {
        return t * t * (3 - 2 * t);
    }

    private static double mix(double a, double b, double t) {
        return a + (b - a) * t;
    }
}
