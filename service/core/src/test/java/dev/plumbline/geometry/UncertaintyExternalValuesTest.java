// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;

/** The propagation engine against the GUM's worked examples; sources in the CSV headers. */
class UncertaintyExternalValuesTest {
    private final GradientInputs inputs = new GradientInputs();

    /**
     * Means whose correlation is that of their simultaneous readings: each set of readings contributes one independent
     * input, with the residuals as sensitivities, so that {@code cov(a, b) = sum (a_k - a)(b_k - b) / (n (n - 1))}, GUM
     * equation 17.
     */
    private Gradient[] correlatedMeans(double[]... readings) {
        int n = readings[0].length;
        Gradient[] sets = new Gradient[n];
        for (int k = 0; k < n; k++) {
            sets[k] = inputs.uncertain(0, 1 / Math.sqrt(n * (n - 1.0)));
        }
        Gradient[] means = new Gradient[readings.length];
        for (int q = 0; q < readings.length; q++) {
            double mean = Arrays.stream(readings[q]).average().orElseThrow();
            means[q] = inputs.exact(mean);
            for (int k = 0; k < n; k++) {
                means[q] = means[q].add(sets[k].multiply(readings[q][k] - mean));
            }
        }
        return means;
    }

    private double correlation(Gradient a, Gradient b) {
        double sum = Math.pow(a.add(b).norm(), 2) - Math.pow(a.norm(), 2) - Math.pow(b.norm(), 2);
        return sum / 2 / a.norm() / b.norm();
    }

    /** GUM H.2. */
    @Test
    void correlatedReadingsOfResistanceReactanceImpedance() {
        List<String[]> rows = Vectors.rows("gum-h2.csv", 5);
        double[] current =
                Arrays.stream(Vectors.column(rows, 1)).map(mA -> mA / 1000).toArray();
        Gradient[] means = correlatedMeans(Vectors.column(rows, 0), current, Vectors.column(rows, 2));
        Gradient impedance = means[0].divide(means[1]);
        Gradient resistance = impedance.multiply(means[2].cos());
        Gradient reactance = impedance.multiply(means[2].sin());
        assertThat(resistance.getReal()).isCloseTo(127.732170, within(5e-7));
        assertThat(resistance.norm()).isCloseTo(0.071071, within(5e-7));
        assertThat(reactance.getReal()).isCloseTo(219.846512, within(5e-7));
        assertThat(reactance.norm()).isCloseTo(0.295582, within(5e-7));
        assertThat(impedance.getReal()).isCloseTo(254.259702, within(5e-7));
        assertThat(impedance.norm()).isCloseTo(0.236336, within(5e-7));
        assertThat(correlation(resistance, reactance)).isCloseTo(-0.588430, within(5e-7));
        assertThat(correlation(resistance, impedance)).isCloseTo(-0.485259, within(5e-7));
        assertThat(correlation(reactance, impedance)).isCloseTo(0.992512, within(5e-7));
    }

    /**
     * GUM H.2 without its correlations: the resistance's uncertainty comes out 2.7 times too large. FACTS 8.2 lists 0.1941,
     * 0.2007 and 0.2039, which follow from the rounded input uncertainties; hence the tolerance.
     */
    @Test
    void ignoringTheCorrelationDoesNotReproduceIt() {
        List<String[]> rows = Vectors.rows("gum-h2.csv", 5);
        double[] current =
                Arrays.stream(Vectors.column(rows, 1)).map(mA -> mA / 1000).toArray();
        Gradient voltage = correlatedMeans(Vectors.column(rows, 0))[0];
        Gradient ampere = correlatedMeans(current)[0];
        Gradient phase = correlatedMeans(Vectors.column(rows, 2))[0];
        Gradient impedance = voltage.divide(ampere);
        assertThat(impedance.multiply(phase.cos()).norm()).isCloseTo(0.1941, within(5e-4));
        assertThat(impedance.multiply(phase.sin()).norm()).isCloseTo(0.2007, within(5e-4));
        assertThat(impedance.norm()).isCloseTo(0.2039, within(5e-4));
    }

    /**
     * GUM H.1 (JCGM 100:2008): length of an end gauge in nm, {@code l = l_s + d - l_s (da theta + a_s dt)}; values as in GTC,
     * docs/API/GUM_H1.rst. Inputs whose sensitivity is zero at their values add nothing to first order.
     */
    @Test
    void endGauge() {
        double rectangular = 1 / Math.sqrt(3);
        Gradient standard = inputs.uncertain(50_000_623, 25);
        Gradient difference =
                inputs.uncertain(215, 5.8).add(inputs.uncertain(0, 3.9)).add(inputs.uncertain(0, 6.7));
        Gradient expansion = inputs.uncertain(11.5e-6, 2e-6 * rectangular);
        Gradient expansions = inputs.uncertain(0, 1e-6 * rectangular);
        Gradient temperatures = inputs.uncertain(0, 0.05 * rectangular);
        Gradient mean = inputs.uncertain(-0.1, 0.2);
        Gradient cyclic = inputs.uncertain(0, 0.5 / Math.sqrt(2));
        Gradient temperature = mean.add(cyclic);
        Gradient length = standard.add(difference)
                .subtract(standard.multiply(expansions.multiply(temperature).add(expansion.multiply(temperatures))));
        assertThat(length.getReal()).isCloseTo(50_000_838, within(0.5));
        assertThat(length.norm()).isCloseTo(31.6639, within(5e-5));
        double[] components = {25, 5.8, 3.9, 6.7, 0, 2.88679, 16.599, 0, 0};
        for (int i = 0; i < components.length; i++) {
            assertThat(Math.abs(length.derivative(i))).as("input " + i).isCloseTo(components[i], within(5e-4));
        }
        assertThat(temperature.norm()).isCloseTo(0.406202, within(5e-7));
    }

    /** JCGM 101:2008, 9.2: a sum of four, each of unit variance, then the fourth with a standard deviation of 10. */
    @Test
    void sumOfFour() {
        for (double[] row : new double[][] {{1, 2}, {10, 10.1489}}) {
            Gradient sum = inputs.exact(0);
            for (double deviation : new double[] {1, 1, 1, row[0]}) {
                sum = sum.add(inputs.uncertain(0, deviation));
            }
            assertThat(sum.norm()).isCloseTo(row[1], within(5e-5));
        }
    }

    /** GUM H.3: a fitted line, its coefficients' correlation, and a prediction outside the data. */
    @Test
    void fittedLineAndPrediction() {
        List<String[]> rows = Vectors.rows("gum-h3.csv", 11);
        double[] temperature = Vectors.column(rows, 0);
        double[] correction = Vectors.column(rows, 1);
        SimpleRegression regression = new SimpleRegression();
        for (int i = 0; i < temperature.length; i++) {
            regression.addData(temperature[i] - 20, correction[i]);
        }
        double scatter = Math.sqrt(regression.getMeanSquareError());
        List<Gradient> readings = new ArrayList<>();
        for (double value : correction) {
            readings.add(inputs.uncertain(value, scatter));
        }
        double mean = Arrays.stream(temperature).average().orElseThrow();
        Gradient slope = inputs.exact(0);
        Gradient level = inputs.exact(0);
        double square =
                Arrays.stream(temperature).map(t -> (t - mean) * (t - mean)).sum();
        for (int i = 0; i < temperature.length; i++) {
            slope = slope.add(readings.get(i).multiply((temperature[i] - mean) / square));
            level = level.add(readings.get(i).divide(temperature.length));
        }
        Gradient intercept = level.subtract(slope.multiply(mean - 20));
        Gradient prediction = intercept.add(slope.multiply(10.0));
        assertThat(intercept.getReal()).isCloseTo(-0.17120379013135, within(1e-12));
        assertThat(intercept.norm()).isCloseTo(0.0028775978, within(5e-11));
        assertThat(slope.getReal()).isCloseTo(0.00218269773989, within(1e-13));
        assertThat(slope.norm()).isCloseTo(0.00066793877, within(5e-12));
        assertThat(correlation(intercept, slope)).isCloseTo(-0.930, within(0.0005));
        assertThat(prediction.getReal()).isCloseTo(-0.14937681273, within(1e-11));
        assertThat(prediction.norm()).isCloseTo(0.0041, within(0.00005));
    }

    /** FACTS 8.6: two marks of standard uncertainty s on a shaft seen over L give u(angle) = sqrt(2) s / L. */
    @Test
    void angleOfTwoMarksFollowsTheSeenLength() {
        double[][] rows = {
            {45, 30, 0.5, 0.74911},
            {30, 30, 0.5, 0.95493},
            {30, 30, 1, 1.90986},
            {8, 6, 0.5, Math.toDegrees(Math.sqrt(2) * 0.5 / 10)}
        };
        for (double[] row : rows) {
            Gradient dx = inputs.uncertain(row[0], row[2]).subtract(inputs.uncertain(0, row[2]));
            Gradient dz = inputs.uncertain(row[1], row[2]).subtract(inputs.uncertain(0, row[2]));
            assertThat(Math.toDegrees(dz.atan2(dx).norm())).isCloseTo(row[3], within(0.000005));
            assertThat(dx.hypot(dz).norm()).isCloseTo(Math.sqrt(2) * row[2], Percentage.withPercentage(1e-9));
        }
    }
}
