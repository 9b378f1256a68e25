// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class CheckTest {
    private static final FrameGeometry FRAME =
            new FrameGeometry(640, 480, List.of(), Optional.empty(), Optional.empty(), "array-1");

    private static Problem problem(Runnable check) {
        Refusal refusal = catchThrowableOfType(Refusal.class, check::run);
        assertThat(refusal).as("refused").isNotNull();
        assertThat(refusal.problem().pointer()).startsWith("/at");
        return refusal.problem();
    }

    private static void accepts(Runnable check) {
        assertThatCode(check::run).doesNotThrowAnyException();
    }

    @Test
    void anAngleLiesBetweenZeroAndNinety() {
        for (double degrees : new double[] {0, 90, -1, Double.NaN}) {
            assertThat(problem(() -> Check.angle("/at", OptionalDouble.of(degrees)))
                            .detail())
                    .contains("between 0 and 90 degrees");
        }
        for (double degrees : new double[] {0.001, 45, 89.999}) {
            accepts(() -> Check.angle("/at", OptionalDouble.of(degrees)));
        }
        accepts(() -> Check.angle("/at", OptionalDouble.empty()));
    }

    @Test
    void aRangeHoldsItsBoundsAndIsNamed() {
        accepts(() -> Check.within("/at", OptionalDouble.of(0), 0, 100));
        accepts(() -> Check.within("/at", OptionalDouble.of(100), 0, 100));
        assertThat(problem(() -> Check.within("/at", OptionalDouble.of(100.1), 0, 100))
                        .remedy())
                .isEqualTo("Give a number between 0.0 and 100.0.");
        assertThat(problem(() -> Check.notNegative("/at", OptionalDouble.of(-0.1)))
                        .remedy())
                .isEqualTo("Give a number of 0 or more.");
        assertThat(problem(() ->
                                Check.within("/at", OptionalDouble.of(Double.NaN), -Double.MAX_VALUE, Double.MAX_VALUE))
                        .remedy())
                .isEqualTo("Give a number that is finite.");
        accepts(() -> Check.notNegative("/at", OptionalDouble.of(0)));
        accepts(() -> Check.positive("/at", OptionalDouble.of(1e-9)));
        assertThat(problem(() -> Check.positive("/at", OptionalDouble.of(0))).remedy())
                .isEqualTo("Give a number above 0.");
    }

    /** Ends 100 px apart, the middle mark h beside the line: the ratio is h sqrt(2 / 3 / 5000), 0.25 at h = 21.65. */
    @Test
    void threeMarksLieInALineWhileTheyAreNotTooBroad() {
        for (int degrees = 0; degrees < 180; degrees += 15) {
            double angle = Math.toRadians(degrees);
            accepts(() -> Check.line("/at", bent(angle, 21.5), FRAME));
            assertThat(problem(() -> Check.line("/at", bent(angle, 21.8), FRAME))
                            .detail())
                    .contains("lie in no line");
        }
    }

    private static List<PointPx> bent(double angle, double beside) {
        return List.of(turned(angle, -50, 0), turned(angle, 0, beside), turned(angle, 50, 0));
    }

    private static PointPx turned(double angle, double along, double beside) {
        return new PointPx(
                320 + along * Math.cos(angle) - beside * Math.sin(angle),
                140 + along * Math.sin(angle) + beside * Math.cos(angle));
    }

    @Test
    void twoMarksTwoPixelsApartFixALine() {
        accepts(() -> Check.line("/at", List.of(new PointPx(10, 10), new PointPx(12, 10)), FRAME));
        assertThat(problem(() -> Check.line("/at", List.of(new PointPx(10, 10), new PointPx(11.9, 10)), FRAME)))
                .isEqualTo(new Problem.MarksCoincide("/at"));
        assertThat(problem(() -> Check.line("/at", List.of(new PointPx(10, 10)), FRAME))
                        .detail())
                .contains("fixes no line");
        accepts(() -> Check.line("/at", List.of(), FRAME));
        assertThat(problem(() -> Check.line("/at", List.of(new PointPx(10, 10), new PointPx(641, 10)), FRAME)))
                .isEqualTo(new Problem.MarkOutsideFrame("/at/1", 640, 480));
        accepts(() -> Check.onFrame("/at", new PointPx(640, 480), FRAME));
        accepts(() -> Check.onFrame("/at", new PointPx(0, 0), FRAME));
    }
}
