// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import dev.plumbline.problem.Refusal;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

/** The words that answers carry (docs/api.md), and what a set of readings is. */
class WordsAndReadingsTest {
    private enum Thing implements Measurand {
        DEPTH,
        LENGTH;

        @Override
        public String field() {
            return "thing";
        }

        @Override
        public Unit unit() {
            return Unit.MILLIMETRE;
        }
    }

    @Test
    void answersSayItInTheseWords() {
        assertThat(Side.LEFT.word()).isEqualTo("left");
        assertThat(Reason.INFEASIBLE.word()).isEqualTo("infeasible");
        assertThat(Assumption.PIXELS_ARE_SQUARE.word()).isEqualTo("pixelsAreSquare");
        assertThat(Assumption.PIXELS_ARE_SQUARE.words()).isEqualTo("the pixels are square");
        assertThat(Doubt.SHORT_SHAFT.word()).isEqualTo("shortShaft");
        assertThat(Doubt.TIP_OFF_SHAFT.words()).isEqualTo("the marked tip lies off the shaft's line");
        assertThat(Standing.CITED.word()).isEqualTo("cited");
        assertThat(Calibration.Source.STATED.word()).isEqualTo("stated");
        assertThat(Probe.Kind.CURVED.word()).isEqualTo("curved");
        assertThat(RepeatedMarks.Used.MEAN_OF_MARKS.word()).isEqualTo("meanOfMarks");
        assertThat(Unit.DEGREE.ucum()).isEqualTo("deg");
        assertThat(Unit.DEGREE.fromInternal(Math.PI)).isCloseTo(180, within(1e-9));
    }

    @Test
    void readingsAreEqualWhenTheyHoldTheSame() {
        Reading five = new Reading.Seen(5, 0.1);
        Readings<Thing> depth = new Readings<>(Map.of(Thing.DEPTH, five), Thing.class);
        assertThat(depth).isEqualTo(new Readings<>(new EnumMap<>(Map.of(Thing.DEPTH, five)), Thing.class));
        assertThat(depth).isNotEqualTo(new Readings<>(Map.of(Thing.LENGTH, five), Thing.class));
        assertThat(depth).isNotEqualTo("depth");
        assertThat(depth.hashCode()).isEqualTo(Map.of(Thing.DEPTH, five).hashCode());
        assertThat(depth.toString()).contains("DEPTH", "5.0");
        assertThat(depth.has(Thing.DEPTH)).isTrue();
        assertThat(depth.has(Thing.LENGTH)).isFalse();
        assertThatThrownBy(() -> depth.of(Thing.LENGTH)).isInstanceOf(IllegalArgumentException.class);
    }

    /** Skin along the row 100 with pixels of 0.1 x 0.2 mm; the needle from the right. */
    @Test
    void pixelsAndMillimetresOfTheProbeFrameAgree() {
        CaseInputs<Gradient> inputs =
                new CaseInputs<>(new NominalInputs(), InputUncertainty.NOTHING_STATED, new Extents());
        FrameGeometry frame = new FrameGeometry(
                640, 480, List.of(), Optional.of(new PixelSize(0.1, 0.2)), Optional.empty(), "array-1");
        Calibration calibration = frame.calibration();
        MarkedFrame<Gradient> marked = new MarkedFrame<>(
                frame,
                calibration,
                inputs.scale(frame, calibration),
                Optional.of(inputs.mark(new PointPx(300, 100))),
                Optional.empty(),
                inputs.marks(List.of(new PointPx(100, 100), new PointPx(500, 100))),
                false);
        ProbeFrame<Gradient> axes =
                marked.probeFrame(new Orientation(Side.RIGHT, false), "/skin").orElseThrow();
        PointMm<Gradient> point = axes.of(inputs.mark(new PointPx(350, 200)));
        assertThat(point.x().getReal()).isCloseTo(5, within(1e-9));
        assertThat(point.y().getReal()).isCloseTo(20, within(1e-9));
        assertThat(axes.toPixel(point).distanceTo(new PointPx(350, 200))).isLessThan(1e-9);
        ProbeFrame<Gradient> fromLeft =
                marked.probeFrame(new Orientation(Side.LEFT, true), "/skin").orElseThrow();
        PointMm<Gradient> mirrored = fromLeft.of(inputs.mark(new PointPx(350, 200)));
        assertThat(mirrored.x().getReal()).isCloseTo(-5, within(1e-9));
        assertThat(mirrored.y().getReal()).isCloseTo(-20, within(1e-9));
        assertThat(fromLeft.toPixel(mirrored).distanceTo(new PointPx(350, 200))).isLessThan(1e-9);
    }

    @Test
    void aFrameAndItsPixelsHaveASize() {
        assertThat(new FrameGeometry(1, 1, List.of(), Optional.empty(), Optional.empty(), "a").columns())
                .isEqualTo(1);
        assertThatThrownBy(() -> new FrameGeometry(0, 1, List.of(), Optional.empty(), Optional.empty(), "a"))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new FrameGeometry(1, 0, List.of(), Optional.empty(), Optional.empty(), "a"))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new PixelSize(0, 1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new PixelSize(1, 0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Foundation(Standing.CITED, " ")).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void aRegionSaysWhyItCannotBeMeasuredIn() {
        assertThat(region(2, 3, 0.01).whyUnusable().orElseThrow()).contains("(0018,6014) is 2, not 1");
        assertThat(region(1, 4, 0.01).whyUnusable().orElseThrow()).contains("4 and 3, not 3 (cm)");
        for (double delta : new double[] {0, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertThat(region(1, 3, delta).whyUnusable().orElseThrow()).contains("zero or not a number");
        }
        assertThat(region(1, 3, -0.01).whyUnusable()).isEmpty();
    }

    private static UltrasoundRegion region(int dataType, int unitsX, double delta) {
        return new UltrasoundRegion(
                new Region(0, 0, 0, 9, 9),
                1,
                dataType,
                OptionalInt.empty(),
                unitsX,
                3,
                delta,
                0.01,
                OptionalInt.empty(),
                OptionalInt.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty());
    }

    @Test
    void aKnownDistanceLiesOnTheFrameAtBothEnds() {
        FrameGeometry frame = new FrameGeometry(640, 480, List.of(), Optional.empty(), Optional.empty(), "array-1");
        KnownDistance off = new KnownDistance(new PointPx(-1, 50), new PointPx(100, 50), 10);
        assertThat(catchThrowableOfType(Refusal.class, () -> off.check("/scale", frame))
                        .problem()
                        .pointer())
                .isEqualTo("/scale/from");
    }
}
