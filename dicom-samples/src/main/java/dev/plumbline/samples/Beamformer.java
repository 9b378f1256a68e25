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
    private final Medium.Grid grid;
    private final Scanner scanner;

    Beamformer(Medium.Grid grid, Scanner scanner) {
        this.grid = grid;
        this.scanner = scanner;
    }

    /** Levels in dB of the mean power of all looks, rows of the grid, margin included. */
    float[] levels(Medium medium, List<Scatterers> looks, Scatterers noise) {
        float[] levels = new float[grid.width() * grid.samples()];
        looks.forEach(look -> addPower(medium, look, noise, levels));
        for (int i = 0; i < levels.length; i++) {
            levels[i] = Decibels.ofPower(levels[i] / looks.size());
        }
        return levels;
    }

    private void addPower(Medium medium, Scatterers tissue, Scatterers noise, float[] power) {
        int size = power.length;
        float[] real = new float[size];
        float[] imaginary = new float[size];
        weigh(medium, tissue, real, imaginary);
        real = acrossBeams(real);
        imaginary = acrossBeams(imaginary);
        addNoise(noise, real, imaginary);
        real = alongBeams(real);
        imaginary = alongBeams(imaginary);
        for (int i = 0; i < size; i++) {
            power[i] += real[i] * real[i] + imaginary[i] * imaginary[i];
        }
    }

    private void weigh(Medium medium, Scatterers tissue, float[] real, float[] imaginary) {
        int width = grid.width();
        float[] lost = new float[width];
        float step = (float) grid.stepMm();
        for (int row = 0; row < grid.samples(); row++) {
            double made = scanner.receiver().gainDbPerMm() * grid.rangeMm(row);
            for (int column = 0; column < width; column++) {
                int i = row * width + column;
                lost[column] += medium.loss[i] * step;
                float left = Decibels.amplitude(made - lost[column]);
                float strength = Decibels.amplitude(medium.echo[i]) * left;
                real[i] = tissue.real[i] * strength + medium.mirror[i] * left;
                imaginary[i] = tissue.imaginary[i] * strength;
            }
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
            float[] kernel = kernel(deviation);
            int reach = kernel.length / 2;
            int start = row * width;
            for (int k = -reach; k <= reach; k++) {
                addShifted(
                        field,
                        blurred,
                        new Span(start + Math.max(0, -k), start + width - Math.max(0, k)),
                        k,
                        kernel[k + reach]);
            }
        }
        return blurred;
    }

    private float[] alongBeams(float[] field) {
        int width = grid.width();
        float[] kernel = kernel(scanner.pulse().axialMm() / grid.stepMm());
        int reach = kernel.length / 2;
        float[] blurred = new float[field.length];
        for (int row = 0; row < grid.samples(); row++) {
            for (int k = -reach; k <= reach; k++) {
                if (0 <= row + k && row + k < grid.samples()) {
                    addShifted(field, blurred, new Span(row * width, (row + 1) * width), k * width, kernel[k + reach]);
                }
            }
        }
        return blurred;
    }

    private static void addShifted(float[] from, float[] to, Span span, int shift, float weight) {
        for (int i = span.start; i < span.end; i++) {
            to[i] += weight * from[i + shift];
        }
    }

    private record Span(int start, int end) {}

    /** A bell whose squares add up to 1, so that speckle keeps its mean power. */
    private static float[] kernel(double deviation) {
        int reach = (int) Math.ceil(2.9 * deviation);
        float[] kernel = new float[2 * reach + 1];
        double power = 0;
        for (int k = -reach; k <= reach; k++) {
            double value = StrictMath.exp(-k * k / (2 * deviation * deviation));
            kernel[k + reach] = (float) value;
            power += value * value;
        }
        for (int k = 0; k < kernel.length; k++) {
            kernel[k] /= (float) Math.sqrt(power);
        }
        return kernel;
    }
}
