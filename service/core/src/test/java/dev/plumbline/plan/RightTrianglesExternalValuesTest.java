// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.plumbline.CaseFixture;
import dev.plumbline.deviation.Comparison;
import dev.plumbline.deviation.DeviationQuantity;
import dev.plumbline.geometry.Reading;
import dev.plumbline.geometry.Vectors;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Angles and paths against published right triangles; sources in the CSV header. */
class RightTrianglesExternalValuesTest {
    private final CaseFixture fixture = new CaseFixture();

    private double value(PlanQuantity quantity) {
        return ((Reading.Seen) Plan.of(fixture.input()).readings().of(quantity)).value();
    }

    @Test
    void angleAndPathOfPublishedTriangles() {
        for (String[] row : Vectors.rows("right-triangles.csv", 11)) {
            double halfDigit = Double.parseDouble(row[5]);
            fixture.targetW = Double.parseDouble(row[1]);
            fixture.intent(new Intent.EntryDistance(Double.parseDouble(row[2])));
            assertThat(value(PlanQuantity.ANGLE_TO_SKIN))
                    .as(row[0])
                    .isCloseTo(Double.parseDouble(row[3]), within(halfDigit));
            assertThat(value(PlanQuantity.PATH)).as(row[0]).isCloseTo(Double.parseDouble(row[4]), within(halfDigit));
        }
    }

    /** FACTS 2: entry / depth = cot a, path / depth = csc a, printed to six decimals. */
    @Test
    void entryAndPathPerDepth() {
        double[][] rows = {
            {15, 3.732051, 3.863703}, {20, 2.747477, 2.923804}, {25, 2.144507, 2.366202}, {30, 1.732051, 2},
            {35, 1.428148, 1.743447}, {40, 1.191754, 1.555724}, {45, 1, 1.414214}, {50, 0.839100, 1.305407},
            {60, 0.577350, 1.154701}
        };
        fixture.targetW = 10;
        for (double[] row : rows) {
            fixture.intent(new Intent.AngleToSkin(row[0]));
            assertThat(value(PlanQuantity.ENTRY_DISTANCE)).isCloseTo(10 * row[1], within(0.000005));
            assertThat(value(PlanQuantity.PATH)).isCloseTo(10 * row[2], within(0.000005));
        }
    }

    /**
     * OpenStax, "Investigating a Guy-wire Problem" (m49395): seen from 50 away, heights 47 and 40 differ by 4.57 degrees. Here
     * one is the plan and the other the observation.
     */
    @Test
    void twoAnglesFromOneBase() {
        fixture.targetW = 40;
        fixture.intent(new Intent.EntryDistance(50));
        Comparison comparison = Comparison.of(
                fixture.input(),
                List.of(fixture.observed(
                        List.of(fixture.at(50 * 0.4, 47 * 0.6), fixture.at(0, 47)), Optional.empty(), false)));
        Reading.Seen difference =
                (Reading.Seen) comparison.deviations().get(0).readings().of(DeviationQuantity.ANGLE_TO_SKIN);
        assertThat(difference.value()).isCloseTo(4.57, within(0.005));
        assertThat(difference.value()).isCloseTo(43.22853 - 38.65981, within(0.00001));
    }

    /** FACTS 1.2: half the beam's thickness over the path; 1 mm over 20, 40 and 60 mm, halved for a mid-plane start. */
    @Test
    void rotationToleranceForAThinSlice() {
        double[][] rows = {{1, 20, 1.4325}, {2, 40, 1.4325}, {4, 60, 1.9102}};
        for (double[] row : rows) {
            fixture.beamThickness = OptionalDouble.of(row[0]);
            fixture.targetW = 5;
            fixture.intent(new Intent.EntryDistance(row[1]));
            assertThat(value(PlanQuantity.ROTATION_TOLERANCE))
                    .isCloseTo(Math.toDegrees(Math.asin(row[0] / 2 / row[1])), within(1e-9))
                    .isCloseTo(row[2], within(0.0005));
        }
    }
}
