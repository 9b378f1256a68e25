// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.linear.EigenDecomposition;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.stat.correlation.Covariance;
import org.apache.commons.math3.util.Decimal64;
import org.junit.jupiter.api.Test;

/** The fitted line on published data. */
class StraightLineExternalValuesTest {
    private static StraightLine<Decimal64> fit(double[][] points) {
        List<PointMm<Decimal64>> marks = new ArrayList<>();
        for (double[] point : points) {
            marks.add(new PointMm<>(new Decimal64(point[0]), new Decimal64(point[1])));
        }
        return StraightLine.through(marks);
    }

    private static double[][] norris() {
        List<String[]> rows = Vectors.rows("nist-norris.csv", 36);
        double[] x = Vectors.column(rows, 0);
        double[] y = Vectors.column(rows, 1);
        double[][] points = new double[x.length][];
        for (int i = 0; i < x.length; i++) {
            points[i] = new double[] {x[i], y[i]};
        }
        return points;
    }

    /** The principal axis by Commons Math's eigen decomposition of the same scatter. */
    @Test
    void directionIsThePrincipalAxis() {
        double[][] points = norris();
        StraightLine<Decimal64> line = fit(points);
        RealVector axis = new EigenDecomposition(new Covariance(points).getCovarianceMatrix()).getEigenvector(0);
        double slope = line.direction().y().getReal() / line.direction().x().getReal();
        assertThat(slope).isCloseTo(axis.getEntry(1) / axis.getEntry(0), within(1e-9));
        // With noise this small both kinds of fit agree to five digits with the certified slope.
        assertThat(slope).isCloseTo(1.00211681802045, within(1e-5));
    }

    @Test
    void noOtherLineIsNearerToThePoints() {
        double[][] points = norris();
        StraightLine<Decimal64> line = fit(points);
        double least = squares(points, line, 0, 0);
        for (double turn : new double[] {-1e-4, 1e-4}) {
            assertThat(squares(points, line, turn, 0)).isGreaterThan(least);
        }
        for (double shift : new double[] {-0.1, 0.1}) {
            assertThat(squares(points, line, 0, shift)).isGreaterThan(least);
        }
    }

    private static double squares(double[][] points, StraightLine<Decimal64> line, double turn, double shift) {
        double angle =
                Math.atan2(line.direction().y().getReal(), line.direction().x().getReal()) + turn;
        double sum = 0;
        for (double[] point : points) {
            double dx = point[0] - line.through().x().getReal();
            double dy = point[1] - line.through().y().getReal();
            double off = dy * Math.cos(angle) - dx * Math.sin(angle) - shift;
            sum += off * off;
        }
        return sum;
    }

    @Test
    void theDirectionRunsFromTheFirstMarkToTheLast() {
        double[][] up = {{0, 0}, {1, 2}, {2, 4}};
        double[][] down = {{2, 4}, {1, 2}, {0, 0}};
        assertThat(fit(up).direction().y().getReal()).isCloseTo(2 / Math.sqrt(5), within(1e-12));
        assertThat(fit(down).direction().y().getReal()).isCloseTo(-2 / Math.sqrt(5), within(1e-12));
    }
}
