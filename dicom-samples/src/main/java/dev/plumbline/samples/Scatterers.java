// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

/**
 * The countless small reflectors whose echoes interfere: circular complex Gaussian values of mean power 1.
 *
 * <p>Box-Muller over tables of 4096 radii and 4096 phases. Source: Goodman, Speckle Phenomena in Optics, 2007, on fully
 * developed speckle as a circular complex Gaussian field, from memory.
 */
final class Scatterers {
    private static final int STEPS = 4096;
    private static final int MASK = STEPS - 1;
    private static final float[] RADIUS = new float[STEPS];
    private static final float[] COSINE = new float[STEPS];
    private static final float[] SINE = new float[STEPS];

    static {
        for (int i = 0; i < STEPS; i++) {
            double half = (i + 0.5) / STEPS;
            RADIUS[i] = (float) Math.sqrt(-StrictMath.log(half));
            COSINE[i] = (float) StrictMath.cos(2 * Math.PI * half);
            SINE[i] = (float) StrictMath.sin(2 * Math.PI * half);
        }
    }

    final int width;
    final float[] real;
    final float[] imaginary;

    private Scatterers(int width, int size) {
        this.width = width;
        real = new float[size];
        imaginary = new float[size];
    }

    static Scatterers drawn(Medium.Grid grid, SampleRandom random) {
        Scatterers drawn = new Scatterers(grid.width(), grid.width() * grid.samples());
        for (int i = 0; i < drawn.real.length; i += 2) {
            long bits = random.bits();
            drawn.set(i, bits);
            if (i + 1 < drawn.real.length) {
                drawn.set(i + 1, bits >>> 32);
            }
        }
        return drawn;
    }

    private void set(int i, long bits) {
        float radius = RADIUS[(int) bits & MASK];
        int phase = (int) (bits >>> 12) & MASK;
        real[i] = radius * COSINE[phase];
        imaginary[i] = radius * SINE[phase];
    }

    /** The same a moment later: shares this much of its field with the former and draws the rest anew. */
    Scatterers later(double correlation, Scatterers fresh) {
        Scatterers later = new Scatterers(width, real.length);
        float kept = (float) correlation;
        float drawn = (float) Math.sqrt(1 - correlation * correlation);
        for (int i = 0; i < real.length; i++) {
            later.real[i] = kept * real[i] + drawn * fresh.real[i];
            later.imaginary[i] = kept * imaginary[i] + drawn * fresh.imaginary[i];
        }
        return later;
    }

    /** The same after the probe has moved to the right by whole beams; what comes into view is taken from a fresh field. */
    Scatterers moved(int lines, Scatterers fresh) {
        Scatterers moved = new Scatterers(width, real.length);
        for (int start = 0; start < real.length; start += width) {
            for (int column = 0; column < width; column++) {
                int from = column + lines;
                boolean known = 0 <= from && from < width;
                moved.real[start + column] = known ? real[start + from] : fresh.real[start + column];
                moved.imaginary[start + column] = known ? imaginary[start + from] : fresh.imaginary[start + column];
            }
        }
        return moved;
    }
}
