// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

class CalibrationTest {
    private static final Region LEFT_HALF = new Region(0, 0, 0, 319, 479);
    private static final Region RIGHT_HALF = new Region(1, 320, 0, 639, 479);
    private static final Region WHOLE = new Region(1, 0, 0, 639, 479);
    private static final NamedMark TARGET = new NamedMark("/marks/target", new PointPx(100, 200));

    private static UltrasoundRegion tissue(Region bounds, double delta) {
        return region(bounds, 1, delta, OptionalInt.empty());
    }

    private static UltrasoundRegion region(Region bounds, int format, double delta, OptionalInt flags) {
        return new UltrasoundRegion(
                bounds,
                format,
                1,
                flags,
                3,
                3,
                delta,
                -delta,
                OptionalInt.empty(),
                OptionalInt.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty());
    }

    private static FrameGeometry frame(List<UltrasoundRegion> regions, Optional<PixelSize> spacing) {
        return new FrameGeometry(640, 480, regions, spacing, Optional.of(new PixelSize(0.3, 0.3)), "array-1");
    }

    private static Problem problem(FrameGeometry frame, NamedMark... marks) {
        Refusal refusal = catchThrowableOfType(Refusal.class, () -> frame.calibration(List.of(marks)));
        return refusal.problem();
    }

    @Test
    void takesTheRegionThatHoldsTheMarks() {
        Calibration calibration = frame(List.of(tissue(LEFT_HALF, 0.01), tissue(RIGHT_HALF, 0.02)), Optional.empty())
                .calibration(List.of(TARGET));
        assertThat(calibration.source()).isEqualTo(Calibration.Source.ULTRASOUND_REGIONS);
        assertThat(calibration.pixel()).isEqualTo(new PixelSize(0.1, 0.1));
        assertThat(calibration.region()).contains(LEFT_HALF);
        assertThat(calibration.doubts()).isEmpty();
    }

    @Test
    void refusesMarksInDifferentRegionsEvenOfEqualScale() {
        FrameGeometry frame = frame(List.of(tissue(LEFT_HALF, 0.01), tissue(RIGHT_HALF, 0.01)), Optional.empty());
        Problem problem = problem(frame, TARGET, new NamedMark("/observations/0/tip", new PointPx(500, 200)));
        assertThat(problem).isInstanceOf(Problem.OutsideMeasuringRegion.class);
        assertThat(problem.pointer()).isEqualTo("/observations/0/tip");
        assertThat(problem.detail()).contains("/marks/target", "/observations/0/tip", "1 and 2");
    }

    @Test
    void theBorderBetweenTwoRegionsBelongsToBoth() {
        FrameGeometry frame = frame(List.of(tissue(LEFT_HALF, 0.01), tissue(RIGHT_HALF, 0.02)), Optional.empty());
        NamedMark border = new NamedMark("/observations/0/tip", new PointPx(320, 200));
        assertThat(frame.calibration(List.of(TARGET, border)).region()).contains(LEFT_HALF);
        NamedMark right = new NamedMark("/marks/target", new PointPx(600, 200));
        assertThat(frame.calibration(List.of(border, right)).region()).contains(RIGHT_HALF);
    }

    @Test
    void prefersTheRegionWithPriorityWhereTwoOverlap() {
        UltrasoundRegion plain = region(new Region(0, 0, 0, 319, 479), 1, 0.01, OptionalInt.of(1));
        UltrasoundRegion first = region(WHOLE, 1, 0.02, OptionalInt.of(2));
        FrameGeometry frame = frame(List.of(plain, first), Optional.empty());
        assertThat(frame.calibration(List.of(TARGET)).region()).contains(WHOLE);
        FrameGeometry withoutFlags = frame(List.of(tissue(LEFT_HALF, 0.01), tissue(WHOLE, 0.02)), Optional.empty());
        assertThat(withoutFlags.calibration(List.of(TARGET)).region()).contains(LEFT_HALF);
    }

    @Test
    void prefersTheOneThatHoldsAllMarks() {
        UltrasoundRegion priority = region(LEFT_HALF, 1, 0.01, OptionalInt.of(0));
        FrameGeometry frame = frame(List.of(priority, tissue(WHOLE, 0.02)), Optional.empty());
        NamedMark tip = new NamedMark("/observations/0/tip", new PointPx(500, 200));
        assertThat(frame.calibration(List.of(TARGET, tip)).region()).contains(WHOLE);
    }

    @Test
    void neverFallsBackToPixelSpacingWhenRegionsCannotBeUsed() {
        FrameGeometry frame =
                frame(List.of(region(LEFT_HALF, 2, 0.01, OptionalInt.empty())), Optional.of(new PixelSize(0.2, 0.2)));
        Problem problem = problem(frame, TARGET);
        assertThat(problem).isInstanceOf(Problem.OutsideMeasuringRegion.class);
        assertThat(problem.detail()).contains("(0018,6012) is 2, not 1 (2D)");
        Refusal whole = catchThrowableOfType(Refusal.class, frame::calibration);
        assertThat(whole.problem().detail()).contains("(0018,6012) is 2, not 1 (2D)");
        assertThat(whole.problem().pointer()).isEqualTo("/frame");
    }

    @Test
    void refusesAMarkOutsideEveryRegion() {
        Problem problem = problem(
                frame(List.of(tissue(LEFT_HALF, 0.01)), Optional.empty()),
                TARGET,
                new NamedMark("/observations/0/shaft/1", new PointPx(500, 200)));
        assertThat(problem.pointer()).isEqualTo("/observations/0/shaft/1");
        assertThat(problem.detail()).contains("outside every region");
    }

    @Test
    void withoutRegionsTakesPixelSpacingThenTheStatedScale() {
        Calibration spacing =
                frame(List.of(), Optional.of(new PixelSize(0.2, 0.25))).calibration(List.of(TARGET));
        assertThat(spacing.source()).isEqualTo(Calibration.Source.PIXEL_SPACING);
        assertThat(spacing.pixel()).isEqualTo(new PixelSize(0.2, 0.25));
        Calibration stated = frame(List.of(), Optional.empty()).calibration();
        assertThat(stated.source()).isEqualTo(Calibration.Source.STATED);
        assertThat(stated.pixel()).isEqualTo(new PixelSize(0.3, 0.3));
    }

    @Test
    void refusesAFrameWithoutAnyScale() {
        FrameGeometry frame = new FrameGeometry(640, 480, List.of(), Optional.empty(), Optional.empty(), "array-1");
        Problem problem = problem(frame, TARGET);
        assertThat(problem).isInstanceOf(Problem.FrameNotCalibrated.class);
        assertThat(problem.remedy()).contains("mmPerColumn");
    }

    @Test
    void doubtsAScaleThatPixelSpacingContradicts() {
        FrameGeometry one = frame(List.of(tissue(LEFT_HALF, 0.01)), Optional.of(new PixelSize(0.1, 0.1009)));
        assertThat(one.calibration(List.of(TARGET)).doubts()).isEmpty();
        FrameGeometry two = frame(List.of(tissue(LEFT_HALF, 0.01)), Optional.of(new PixelSize(0.1, 0.1025)));
        assertThat(two.calibration(List.of(TARGET)).doubts()).hasSize(1);
    }

    @Test
    void explainsAFrameByItsLargestUsableRegion() {
        FrameGeometry frame = frame(
                List.of(
                        tissue(LEFT_HALF, 0.01),
                        region(new Region(1, 0, 0, 639, 479), 3, 0.01, OptionalInt.empty()),
                        tissue(new Region(2, 320, 0, 639, 470), 0.02)),
                Optional.empty());
        assertThat(frame.calibration().region()).contains(LEFT_HALF);
    }

    /** 100 x 400, 400 x 50 and 250 x 200 pixels: neither the highest nor the widest is the largest. */
    @Test
    void theLargestRegionIsThatWithTheMostPixels() {
        UltrasoundRegion high = tissue(new Region(0, 0, 50, 99, 449), 0.01);
        UltrasoundRegion wide = tissue(new Region(1, 200, 300, 599, 349), 0.01);
        UltrasoundRegion large = tissue(new Region(2, 300, 10, 549, 209), 0.01);
        for (List<UltrasoundRegion> order : List.of(List.of(high, wide, large), List.of(large, wide, high))) {
            assertThat(frame(order, Optional.empty()).calibration().region()).contains(large.bounds());
        }
    }
}
