// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

/** Smooth random relief over the plane: the irregularity of tissue that stays the same from frame to frame. */
final class Texture {
    private static final int SIDE = 64;
    private static final int MASK = SIDE - 1;

    private final float[] knots = new float[SIDE * SIDE];

    Texture(SampleRandom random) {
        SampleRandom own = new SampleRandom(random.bits());
        for (int i = 0; i < knots.length; i++) {
            knots[i] = (float) own.between(-1, 1);
        }
    }

    /** Value within [-1, 1] at a place given in units of the relief's own grain; repeats after 64 of them. */
    double at(double across, double along) {
        int column = floor(across);
        int row = floor(along);
        double s = smooth(across - column);
        double t = smooth(along - row);
        int upper = (row & MASK) * SIDE;
        int lower = (row + 1 & MASK) * SIDE;
        int left = column & MASK;
        int right = column + 1 & MASK;
        double top = knots[upper + left] + s * (knots[upper + right] - knots[upper + left]);
        double bottom = knots[lower + left] + s * (knots[lower + right] - knots[lower + left]);
        return top + t * (bottom - top);
    }

    private static int floor(double value) {
        int towardsZero = (int) value;
        return value < towardsZero ? towardsZero - 1 : towardsZero;
    }

    private static double smooth(double t) {
        return t * t * (3 - 2 * t);
    }
}
