// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.plumbline.CaseFixture;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Where the midpoint may lie against the skin line, and readings against their uncertainty. */
class MarkedFrameTest {
    private final CaseFixture fixture = new CaseFixture();

    /** Skin level at w = 0; a midpoint this far below it on the fixture's frame. */
    private boolean off(
            double midpointW, Probe.Kind kind, OptionalDouble chord, OptionalDouble radius, boolean inverted) {
        FrameGeometry frame = fixture.frame();
        Calibration calibration = frame.calibration();
        CaseInputs<Gradient> inputs =
                new CaseInputs<>(new NominalInputs(), InputUncertainty.NOTHING_STATED, new Extents());
        PointPx midpoint = new PointPx(1000, 1000 + (inverted ? -midpointW : midpointW) / 0.05);
        MarkedFrame<Gradient> marked = new MarkedFrame<>(
                frame,
                calibration,
                inputs.scale(frame, calibration),
                Optional.of(inputs.mark(midpoint)),
                Optional.empty(),
                inputs.marks(List.of(new PointPx(200, 1000), new PointPx(1800, 1000))),
                false);
        return marked.midpointOffSkin(new Probe(
                Optional.of(kind),
                chord,
                Optional.of(midpoint),
                Optional.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.of(inverted),
                radius,
                OptionalDouble.empty()));
    }

    @Test
    void theMidpointOfALinearFaceLiesOnTheSkin() {
        for (boolean inverted : new boolean[] {false, true}) {
            for (double near : new double[] {0, 2.9, -2.9}) {
                assertThat(off(near, Probe.Kind.LINEAR, OptionalDouble.of(60), OptionalDouble.empty(), inverted))
                        .isFalse();
            }
            for (double far : new double[] {3.1, -3.1}) {
                assertThat(off(far, Probe.Kind.LINEAR, OptionalDouble.of(60), OptionalDouble.empty(), inverted))
                        .isTrue();
            }
        }
    }

    /** A chord of 60 mm on a radius of 50 mm has a sagitta of 10 mm; without the radius it is at most 30 mm. */
    @Test
    void theMiddleOfACurvedFaceMayLieDeeperByItsSagitta() {
        OptionalDouble chord = OptionalDouble.of(60);
        OptionalDouble unknown = OptionalDouble.empty();
        for (boolean inverted : new boolean[] {false, true}) {
            assertThat(off(12.9, Probe.Kind.CURVED, chord, OptionalDouble.of(50), inverted))
                    .isFalse();
            assertThat(off(13.1, Probe.Kind.CURVED, chord, OptionalDouble.of(50), inverted))
                    .isTrue();
            assertThat(off(-2.9, Probe.Kind.CURVED, chord, OptionalDouble.of(50), inverted))
                    .isFalse();
            assertThat(off(-3.1, Probe.Kind.CURVED, chord, OptionalDouble.of(50), inverted))
                    .isTrue();
            assertThat(off(32.9, Probe.Kind.CURVED, chord, unknown, inverted)).isFalse();
            assertThat(off(33.1, Probe.Kind.CURVED, chord, unknown, inverted)).isTrue();
            assertThat(off(40, Probe.Kind.CURVED, unknown, unknown, inverted)).isFalse();
        }
    }

    @Test
    void aDifferenceCountsBeyondItsExpandedUncertainty() {
        assertThat(new Reading.Seen(2.1, 1).exceedsUncertainty()).isTrue();
        assertThat(new Reading.Seen(-2.1, 1).exceedsUncertainty()).isTrue();
        assertThat(new Reading.Seen(2, 1).exceedsUncertainty()).isFalse();
        assertThat(new Reading.Seen(-1.9, 1).exceedsUncertainty()).isFalse();
        assertThat(new Reading.Seen(0, 1).expandedUncertainty()).isCloseTo(2, within(1e-12));
    }

    @Test
    void theOtherSideIsTheOtherSide() {
        assertThat(new Orientation(Side.LEFT, true).otherSide()).isEqualTo(new Orientation(Side.RIGHT, true));
        assertThat(new Orientation(Side.RIGHT, false).otherSide()).isEqualTo(new Orientation(Side.LEFT, false));
    }

    /** Three columns and two rows: their pixels' outer borders are part of the region. */
    @Test
    void aRegionHoldsItsPixelsToTheirOuterBorders() {
        Region region = new Region(0, 10, 20, 12, 21);
        for (double[] held : new double[][] {{10, 20}, {13, 22}, {11.5, 21}, {13, 20}, {10, 22}}) {
            assertThat(region.contains(new PointPx(held[0], held[1]))).isTrue();
        }
        for (double[] beside : new double[][] {{9.9, 21}, {13.1, 21}, {11, 19.9}, {11, 22.1}}) {
            assertThat(region.contains(new PointPx(beside[0], beside[1]))).isFalse();
        }
    }
}
