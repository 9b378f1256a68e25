// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

class KnownDistanceTest {
    private static final NamedMark TARGET = new NamedMark("/marks/target", new PointPx(100, 200));
    /** 40 mm along a 3-4-5 triangle of 500 pixels. */
    private static final KnownDistance SLANTED = new KnownDistance(new PointPx(100, 50), new PointPx(400, 450), 40);

    private static final KnownDistance RULER = new KnownDistance(new PointPx(600, 40), new PointPx(600, 440), 50);

    private static FrameGeometry bare(OptionalDouble heightToWidth, KnownDistance distance) {
        return new FrameGeometry(
                640,
                480,
                List.of(),
                Optional.empty(),
                Optional.empty(),
                "array-1",
                heightToWidth,
                Optional.of(distance));
    }

    private static UltrasoundRegion region(Region bounds, int dataType) {
        return new UltrasoundRegion(
                bounds,
                1,
                dataType,
                OptionalInt.empty(),
                3,
                3,
                0.01,
                0.01,
                OptionalInt.empty(),
                OptionalInt.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty());
    }

    private static Problem problem(FrameGeometry frame) {
        return catchThrowableOfType(Refusal.class, () -> frame.calibration("/observations/0/frame", List.of(TARGET)))
                .problem();
    }

    @Test
    void squarePixelsWhereNothingSaysOtherwise() {
        Calibration calibration = bare(OptionalDouble.empty(), SLANTED).calibration(List.of(TARGET));
        assertThat(calibration.source()).isEqualTo(Calibration.Source.STATED);
        assertThat(calibration.pixel().mmPerColumn()).isCloseTo(0.08, within(1e-12));
        assertThat(calibration.pixel().mmPerRow()).isCloseTo(0.08, within(1e-12));
        assertThat(calibration.knownDistance()).contains(SLANTED);
        assertThat(calibration.doubts()).anyMatch(doubt -> doubt.contains("square"));
    }

    @Test
    void anAspectRatioOfTheObjectIsUsed() {
        // Pixels twice as high as wide: 300 columns and 400 rows are hypot(300, 800) = 854.4 widths of a pixel.
        Calibration calibration = bare(OptionalDouble.of(2), SLANTED).calibration();
        assertThat(calibration.pixel().mmPerColumn()).isCloseTo(0.046816459, within(1e-9));
        assertThat(calibration.pixel().mmPerRow()).isCloseTo(0.093632918, within(1e-9));
        assertThat(calibration.doubts()).noneMatch(doubt -> doubt.contains("square"));
    }

    @Test
    void goesBeforePixelSpacingAndDoubtsADifference() {
        FrameGeometry agreeing = new FrameGeometry(
                        640, 480, List.of(), Optional.of(new PixelSize(0.1255, 0.1255)), Optional.empty(), "array-1")
                .with(Optional.of(RULER));
        assertThat(agreeing.calibration().source()).isEqualTo(Calibration.Source.STATED);
        assertThat(agreeing.calibration().pixel().mmPerRow()).isEqualTo(0.125);
        assertThat(agreeing.calibration().doubts()).noneMatch(doubt -> doubt.contains("Pixel Spacing"));
        FrameGeometry differing = new FrameGeometry(
                        640, 480, List.of(), Optional.of(new PixelSize(0.128, 0.125)), Optional.empty(), "array-1")
                .with(Optional.of(RULER));
        assertThat(differing.calibration().doubts())
                .anyMatch(doubt -> doubt.contains("Pixel Spacing says 0.12800 x 0.12500 mm"));
    }

    @Test
    void countsWhereNoUsableRegionHoldsTheMarks() {
        FrameGeometry doppler = new FrameGeometry(
                        640,
                        480,
                        List.of(region(new Region(0, 0, 0, 639, 479), 2)),
                        Optional.empty(),
                        Optional.empty(),
                        "array-1")
                .with(Optional.of(RULER));
        assertThat(doppler.calibration(List.of(TARGET)).source()).isEqualTo(Calibration.Source.STATED);
        FrameGeometry elsewhere = new FrameGeometry(
                        640,
                        480,
                        List.of(region(new Region(0, 320, 0, 639, 479), 1)),
                        Optional.empty(),
                        Optional.empty(),
                        "array-1")
                .with(Optional.of(RULER));
        assertThat(elsewhere.calibration(List.of(TARGET)).pixel()).isEqualTo(new PixelSize(0.125, 0.125));
    }

    @Test
    void isRefusedWhereAUsableRegionTellsTheScale() {
        FrameGeometry frame = new FrameGeometry(
                        640,
                        480,
                        List.of(region(new Region(0, 0, 0, 639, 479), 1)),
                        Optional.empty(),
                        Optional.empty(),
                        "array-1")
                .with(Optional.of(RULER));
        Problem problem = problem(frame);
        assertThat(problem).isInstanceOf(Problem.ContradictoryFields.class);
        assertThat(problem.pointer()).isEqualTo("/observations/0/frame/scale");
        assertThat(problem.detail()).contains("region 0", "0.10000", "0.12500", "+25.0 %");
        assertThat(problem.remedy()).contains("Leave the scale out");
    }

    @Test
    void refusesPointsTooNearToEachOtherOrOffTheFrame() {
        KnownDistance near = new KnownDistance(new PointPx(100, 100), new PointPx(112, 115), 10);
        assertThat(problem(bare(OptionalDouble.empty(), near)).pointer()).isEqualTo("/observations/0/frame/scale");
        assertThat(problem(bare(OptionalDouble.empty(), near)).detail()).contains("20 pixels");
        KnownDistance enough = new KnownDistance(new PointPx(100, 100), new PointPx(112, 116), 10);
        assertThat(bare(OptionalDouble.empty(), enough).calibration().pixel().mmPerRow())
                .isCloseTo(0.5, within(1e-12));
        KnownDistance off = new KnownDistance(new PointPx(100, 100), new PointPx(100, 481), 10);
        assertThat(problem(bare(OptionalDouble.empty(), off)).pointer()).isEqualTo("/observations/0/frame/scale/to");
        assertThatThrownBy(() -> new KnownDistance(new PointPx(0, 0), new PointPx(100, 0), Double.NaN))
                .isInstanceOf(IllegalArgumentException.class);
    }

    /** Both ends of the ruler are uncertain along it: u(scale)/scale = sqrt(2) u / length, the same for both axes. */
    @Test
    void theEndsOfTheRulerMakeTheScaleUncertainOnBothAxesAlike() {
        InputUncertainty marks = new InputUncertainty(OptionalDouble.of(1.5), OptionalDouble.of(0), Optional.empty());
        GradientInputs numbers = new GradientInputs();
        CaseInputs<Gradient> inputs = new CaseInputs<>(numbers, marks, new Extents());
        FrameGeometry frame = bare(OptionalDouble.empty(), SLANTED);
        Scale<Gradient> scale = inputs.scale(frame, frame.calibration());
        double expected = 0.08 * Math.sqrt(2) * 1.5 / 500;
        assertThat(numbers.standardUncertainty(scale.mmPerColumn())).isCloseTo(expected, within(1e-12));
        assertThat(numbers.standardUncertainty(scale.mmPerRow())).isCloseTo(expected, within(1e-12));
        assertThat(numbers.standardUncertainty(scale.mmPerColumn().divide(scale.mmPerRow())))
                .isCloseTo(0, within(1e-12));
        Scale<Gradient> again = inputs.scale(frame, frame.calibration());
        assertThat(numbers.standardUncertainty(scale.mmPerColumn().divide(again.mmPerColumn())))
                .as("one ruler, marked once")
                .isCloseTo(0, within(1e-12));
    }

    @Test
    void theFactorsOfTheEquipmentComeOnTop() {
        InputUncertainty both = new InputUncertainty(OptionalDouble.of(1), OptionalDouble.of(0.01), Optional.empty());
        GradientInputs numbers = new GradientInputs();
        FrameGeometry frame = bare(OptionalDouble.empty(), RULER);
        Scale<Gradient> scale = new CaseInputs<>(numbers, both, new Extents()).scale(frame, frame.calibration());
        double relative = Math.hypot(0.01, Math.sqrt(2) / 400);
        assertThat(numbers.standardUncertainty(scale.mmPerColumn())).isCloseTo(0.125 * relative, within(1e-12));
        assertThat(numbers.standardUncertainty(scale.mmPerColumn().divide(scale.mmPerRow())))
                .as("each axis has its own")
                .isCloseTo(Math.sqrt(2) * 0.01, within(1e-12));
    }
}
