// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.math3.special.Gamma;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Statistics of speckle on a field of one strength. Source: Burckhardt, Speckle in ultrasound B-mode scans, IEEE Trans
 * Sonics Ultrason 1978;25:1-6, from memory; the figures themselves are closed forms of the Rayleigh distribution.
 */
class SpeckleTest {
    private static final Medium.Grid GRID = new Medium.Grid(Phantom.FACE, 320, 800, 0.05);
    private static final Scanner SCANNER = Phantom.scanner(0, 1);

    @Test
    void oneLookHasTheSignalToNoiseRatioOfARayleighMagnitude() {
        double[] magnitudes = magnitudes(field(1));

        assertThat(mean(magnitudes) / deviation(magnitudes))
                .isCloseTo(Math.sqrt(Math.PI / (4 - Math.PI)), within(0.04));
    }

    @Test
    void oneLookFollowsTheRayleighDistributionAtEveryDecile() {
        double[] magnitudes = magnitudes(field(1));
        double meanPower = Arrays.stream(magnitudes).map(a -> a * a).average().orElseThrow();

        for (int tenth = 1; tenth <= 9; tenth++) {
            double share = tenth / 10.0;
            double quantile = Math.sqrt(-meanPower * Math.log(1 - share));
            double below = Arrays.stream(magnitudes).filter(a -> a < quantile).count() / (double) magnitudes.length;
            double fourStandardErrors = 4 * Math.sqrt(share * (1 - share) / magnitudes.length);
            assertThat(below).as("share below the %d. decile", tenth).isCloseTo(share, within(fourStandardErrors));
        }
    }

    /** Mean power of n looks is Gamma(n) distributed, so its root has a signal-to-noise ratio in closed form. */
    @ParameterizedTest
    @ValueSource(ints = {2, 3, 4})
    void severalLooksSmoothAsIndependentPicturesDo(int looks) {
        double[] magnitudes = magnitudes(field(looks));
        double ratio = Math.exp(Gamma.logGamma(looks + 0.5) - Gamma.logGamma(looks));
        double expected = ratio / Math.sqrt(looks - ratio * ratio);

        assertThat(mean(magnitudes) / deviation(magnitudes)).isCloseTo(expected, within(0.03 * expected));
    }

    /** {@code (20 / ln 10) * pi / sqrt 24} = 5.57 dB: the deviation of the logarithm of an exponential variable. */
    @Test
    void levelsSpreadAsTheLogarithmOfARayleighMagnitude() {
        float[] levels = field(1);
        double[] sampled = sampled(levels).stream().mapToDouble(i -> levels[i]).toArray();

        assertThat(deviation(sampled)).isCloseTo(20 / Math.log(10) * Math.PI / Math.sqrt(24), within(0.15));
    }

    @Test
    void specklesAreWiderAwayFromTheFocusThanAtIt() {
        float[] levels = field(1);

        double atFocus = widthAcross(levels, 20);
        assertThat(widthAcross(levels, 3)).isGreaterThan(1.15 * atFocus);
        assertThat(widthAcross(levels, 38)).isGreaterThan(1.15 * atFocus);
    }

    @Test
    void specklesAreNarrowerAlongTheBeamThanAcrossIt() {
        float[] levels = field(1);

        assertThat(correlationLengthMm(levels, GRID.width(), GRID.stepMm()))
                .isLessThan(0.9 * correlationLengthMm(levels, 1, GRID.pitchMm(20)));
    }

    @Test
    void meanBrightnessStaysLevelWithDepthWhereTheGainMatchesTheLoss() {
        double[] magnitudes = magnitudes(field(1));
        double shallow = mean(Arrays.copyOf(magnitudes, magnitudes.length / 2));
        double deep = mean(Arrays.copyOfRange(magnitudes, magnitudes.length / 2, magnitudes.length));

        assertThat(20 * Math.log10(deep / shallow)).isCloseTo(0, within(0.5));
    }

    private static float[] field(int looks) {
        SampleRandom random = new SampleRandom(19);
        Medium medium = Medium.of(GRID, TrunkAnatomies.phantom().structures(), 0);
        List<Scatterers> drawn = IntStream.range(0, looks)
                .mapToObj(look -> Scatterers.drawn(GRID, random.of("look " + look)))
                .toList();
        return new Beamformer(GRID, SCANNER).levels(medium, drawn, Scatterers.drawn(GRID, random.of("noise")));
    }

    /** Far enough apart to be independent, away from the ends of the beams. */
    private static List<Integer> sampled(float[] levels) {
        List<Integer> sampled = new ArrayList<>();
        for (int row = 20; row < GRID.samples() - 20; row += 9) {
            for (int column = Medium.MARGIN; column < GRID.width() - Medium.MARGIN; column += 10) {
                sampled.add(row * GRID.width() + column);
            }
        }
        assertThat(levels).hasSize(GRID.width() * GRID.samples());
        return sampled;
    }

    private static double[] magnitudes(float[] levels) {
        return sampled(levels).stream()
                .mapToDouble(i -> Math.pow(10, levels[i] / 20))
                .toArray();
    }

    private static double widthAcross(float[] levels, double depthMm) {
        int row = (int) (depthMm / GRID.stepMm());
        double sum = 0;
        int rows = 0;
        for (int r = row - 15; r <= row + 15; r += 5) {
            int start = r * GRID.width();
            float[] line = Arrays.copyOfRange(levels, start, start + GRID.width());
            sum += correlationLengthMm(line, 1, GRID.pitchMm(depthMm));
            rows++;
        }
        return sum / rows;
    }

    /** Distance at which the power's autocovariance has fallen to one half, interpolated. */
    private static double correlationLengthMm(float[] levels, int stride, double stepMm) {
        double[] power = new double[levels.length];
        for (int i = 0; i < levels.length; i++) {
            power[i] = Math.pow(10, levels[i] / 10);
        }
        double mean = mean(power);
        double former = 1;
        double variance = covariance(power, mean, 0);
        for (int lag = 1; ; lag++) {
            double now = covariance(power, mean, lag * stride) / variance;
            if (now < 0.5) {
                return stepMm * (lag - 1 + (former - 0.5) / (former - now));
            }
            former = now;
        }
    }

    private static double covariance(double[] values, double mean, int lag) {
        double sum = 0;
        for (int i = 0; i + lag < values.length; i++) {
            sum += (values[i] - mean) * (values[i + lag] - mean);
        }
        return sum / (values.length - lag);
    }

    private static double mean(double[] values) {
        return Arrays.stream(values).average().orElseThrow();
    }

    private static double deviation(double[] values) {
        double mean = mean(values);
        return Math.sqrt(Arrays.stream(values)
                .map(v -> (v - mean) * (v - mean))
                .average()
                .orElseThrow());
    }
}
