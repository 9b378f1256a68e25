// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

import java.util.List;

/**
 * From tissue to the level of the echo along every beam.
 *
 * <p>The scatterers, weighted with the tissue's strength and what is left of the beam, are blurred with the pulse along
 * the beam and with the beam's width across it; the level is that of the magnitude. Where many scatterers of equal
 * strength share a pulse the magnitude is Rayleigh distributed. Source: Burckhardt, Speckle in ultrasound B-mode scans,
 * IEEE Trans Sonics Ultrason 1978;25:1-6, from memory.
 */
final class Beamformer {
    /** In beams: a wider beam would reach beyond the margin of the field. */
    private static final double MOST_DEVIATION = (Medium.MARGIN - 1) / 2.7;

    private final Medium.Grid grid;
    private final Scanner scanner;

    Beamformer(Medium.Grid grid, Scanner scanner) {
        this.grid = grid;
        this.scanner = scanner;
    }

    /** Levels in dB of the mean power of all looks, rows of the grid, margin included. */
    float[] levels(Medium medium, List<Scatterers> looks, Scatterers noise) {
        Received received = received(medium);
        float[] levels = new float[grid.width() * grid.samples()];
        looks.forEach(look -> addPower(received, look, noise, levels));
        for (int i = 0; i < levels.length; i++) {
            levels[i] = Decibels.ofPower(levels[i] / looks.size());
        }
        return levels;
    }

    /** Amplitudes after what the beam has lost and what the gain makes up for. */
    private static final class Received {
        private final float[] scatter;
        private final float[] mirror;

        Received(int size) {
            scatter = new float[size];
            mirror = new float[size];
        }
    }

    private Received received(Medium medium) {
        int width = grid.width();
        float[] lost = new float[width];
        float step = (float) grid.stepMm();
        Received received = new Received(medium.echo.length);
        for (int row = 0; row < grid.samples(); row++) {
            double made = scanner.receiver().gainDbPerMm() * grid.rangeMm(row);
            for (int column = 0; column < width; column++) {
                int i = row * width + column;
                lost[column] += medium.loss[i] * step;
                received.scatter[i] = Decibels.amplitude(medium.echo[i] + made - lost[column]);
                received.mirror[i] =
                        medium.mirror[i] == 0 ? 0 : medium.mirror[i] * Decibels.amplitude(made - lost[column]);
            }
        }
        return received;
    }

    private void addPower(Received received, Scatterers tissue, Scatterers noise, float[] power) {
        float[] real = new float[power.length];
        float[] imaginary = new float[power.length];
        for (int i = 0; i < power.length; i++) {
            real[i] = tissue.real[i] * received.scatter[i] + received.mirror[i];
            imaginary[i] = tissue.imaginary[i] * received.scatter[i];
        }
        real = acrossBeams(real);
        imaginary = acrossBeams(imaginary);
        addNoise(noise, real, imaginary);
        real = alongBeams(real);
        imaginary = alongBeams(imaginary);
        for (int i = 0; i < power.length; i++) {
            power[i] += real[i] * real[i] + imaginary[i] * imaginary[i];
        }
    }

    private void addNoise(Scatterers noise, float[] real, float[] imaginary) {
        int width = grid.width();
        for (int row = 0; row < grid.samples(); row++) {
            float level = Decibels.amplitude(
                    scanner.receiver().noiseDb() + scanner.receiver().gainDbPerMm() * grid.rangeMm(row));
            for (int i = row * width; i < (row + 1) * width; i++) {
                real[i] += noise.real[i] * level;
                imaginary[i] += noise.imaginary[i] * level;
            }
        }
    }

    private float[] acrossBeams(float[] field) {
        int width = grid.width();
        float[] blurred = new float[field.length];
        for (int row = 0; row < grid.samples(); row++) {
            double range = grid.rangeMm(row);
            double deviation = scanner.pulse().lateralMm() * scanner.focus().widening(range) / grid.pitchMm(range);
            blur(field, blurred, new Span(row * width, width, 1), kernel(Math.min(deviation, MOST_DEVIATION)));
        }
        return blurred;
    }

    private float[] alongBeams(float[] field) {
        int width = grid.width();
        float[] kernel = kernel(scanner.pulse().axialMm() / grid.stepMm());
        float[] blurred = new float[field.length];
        for (int row = kernel.length; row < grid.samples() - kernel.length; row++) {
            blur(field, blurred, new Span(row * width, width, width), kernel);
        }
        for (int row = 0; row < grid.samples(); row++) {
            if (row < kernel.length || row >= grid.samples() - kernel.length) {
                blurEndOfBeams(field, blurred, row, kernel);
            }
        }
        return blurred;
    }

    /** A run of samples, each blurred over neighbours that are a stride apart. */
    private record Span(int start, int length, int stride) {}

    /** Half a symmetric kernel, middle first. Across the beams the outermost samples lie in the margin and are left out. */
    private static void blur(float[] from, float[] to, Span span, float[] kernel) {
        int cut = span.stride == 1 ? kernel.length - 1 : 0;
        int start = span.start + cut;
        int end = span.start + span.length - cut;
        for (int i = start; i < end; i++) {
            to[i] = kernel[0] * from[i];
        }
        for (int k = 1; k < kernel.length; k++) {
            int shift = k * span.stride;
            float weight = kernel[k];
            for (int i = start; i < end; i++) {
                to[i] += weight * (from[i - shift] + from[i + shift]);
            }
        }
    }

    private void blurEndOfBeams(float[] from, float[] to, int row, float[] kernel) {
        int width = grid.width();
        for (int k = 1 - kernel.length; k < kernel.length; k++) {
            if (0 <= row + k && row + k < grid.samples()) {
                for (int i = row * width; i < (row + 1) * width; i++) {
                    to[i] += kernel[Math.abs(k)] * from[i + k * width];
                }
            }
        }
    }

    /** Half of a bell whose squares add up to 1, so that speckle keeps its mean power; the middle first. */
    private static float[] kernel(double deviation) {
        int reach = (int) Math.ceil(2.7 * deviation);
        double[] bell = new double[reach + 1];
        double power = 0;
        for (int k = 0; k <= reach; k++) {
            bell[k] = StrictMath.exp(-k * k / (2 * deviation * deviation));
            power += (k == 0 ? 1 : 2) * bell[k] * bell[k];
        }
        float[] kernel = new float[reach + 1];
        for (int k = 0; k <= reach; k++) {
            kernel[k] = (float) (bell[k] / Math.sqrt(power));
        }
        return kernel;
    }
}
