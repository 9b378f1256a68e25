// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

/** Levels and amplitudes: {@code L = 20 log10 a}. Tables, because the platform's own exponentials differ between machines. */
final class Decibels {
    /** Below this a level is silence. */
    static final double SILENCE = -150;

    private static final int STEPS_PER_DB = 16;
    private static final double LOUDEST = 60;
    private static final float[] AMPLITUDE = amplitudes();

    private static final int MANTISSA_BITS = 11;
    private static final int DROPPED_BITS = 23 - MANTISSA_BITS;
    private static final float[] LEVEL_OF_MANTISSA = levels();
    private static final float LEVEL_OF_TWO = (float) (10 * StrictMath.log10(2));

    private Decibels() {}

    /** Amplitude of a level, on a grid of 1/16 dB. */
    static float amplitude(double level) {
        double clipped = Math.max(SILENCE, Math.min(LOUDEST, level));
        return AMPLITUDE[(int) ((clipped - SILENCE) * STEPS_PER_DB + 0.5)];
    }

    /** Level of a power {@code a^2}, within 0.004 dB; {@code 10 log10} split into exponent and mantissa. */
    static float ofPower(float power) {
        if (power < Float.MIN_NORMAL) {
            return (float) SILENCE;
        }
        int bits = Float.floatToRawIntBits(power);
        int exponent = (bits >>> 23) - 127;
        return exponent * LEVEL_OF_TWO + LEVEL_OF_MANTISSA[(bits & 0x7fffff) >>> DROPPED_BITS];
    }

    private static float[] amplitudes() {
        float[] table = new float[(int) ((LOUDEST - SILENCE) * STEPS_PER_DB) + 1];
        for (int i = 0; i < table.length; i++) {
            table[i] = (float) StrictMath.pow(10, (SILENCE + (double) i / STEPS_PER_DB) / 20);
        }
        return table;
    }

    private static float[] levels() {
        float[] table = new float[1 << MANTISSA_BITS];
        for (int i = 0; i < table.length; i++) {
            table[i] = (float) (10 * StrictMath.log10(1 + (i + 0.5) / table.length));
        }
        return table;
    }
}
