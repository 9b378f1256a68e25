// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.observation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.plumbline.CaseFixture;
import dev.plumbline.deviation.Comparison;
import dev.plumbline.deviation.DeviationQuantity;
import dev.plumbline.geometry.Doubt;
import dev.plumbline.geometry.InputUncertainty;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Reading;
import dev.plumbline.geometry.Reason;
import dev.plumbline.geometry.Side;
import dev.plumbline.geometry.SkinBeyondProbe;
import dev.plumbline.plan.Intent;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** What each mark gives, and the reason for each number that its absence leaves out. */
class ObservationTest {
    private final CaseFixture fixture = new CaseFixture();

    private Comparison compare(ObservationInput observed) {
        return Comparison.of(fixture.input(), List.of(observed));
    }

    private Observation observe(ObservationInput observed) {
        return compare(observed).observations().get(0);
    }

    private Observation observe(List<PointPx> shaft, Optional<PointPx> tip, boolean tipIsTip) {
        return observe(fixture.observed(shaft, tip, tipIsTip));
    }

    private static double value(Observation observation, ObservationQuantity quantity) {
        return ((Reading.Seen) observation.readings().of(quantity)).value();
    }

    private static void because(Reason reason, Observation observation, ObservationQuantity... quantities) {
        for (ObservationQuantity quantity : quantities) {
            assertThat(observation.readings().of(quantity)).as(quantity.field()).isEqualTo(new Reading.NotSeen(reason));
        }
    }

    private List<PointPx> shaft() {
        return List.of(fixture.at(30, 10), fixture.at(15, 20));
    }

    @Test
    void aTipAloneHasADepthAndADistanceFromTheTarget() {
        Observation observation = observe(List.of(), Optional.of(fixture.at(3, 26)), true);
        assertThat(value(observation, ObservationQuantity.TIP_DEPTH)).isCloseTo(26, within(1e-9));
        assertThat(value(observation, ObservationQuantity.DEEPEST_SEEN_DEPTH)).isCloseTo(26, within(1e-9));
        assertThat(value(observation, ObservationQuantity.TIP_TO_TARGET)).isCloseTo(5, within(1e-9));
        because(
                Reason.NOT_MARKED,
                observation,
                ObservationQuantity.SEEN_LENGTH,
                ObservationQuantity.ANGLE_TO_SKIN,
                ObservationQuantity.ENTRY_DISTANCE,
                ObservationQuantity.ENTRY_EXTRAPOLATED,
                ObservationQuantity.ROTATION_BOUND,
                ObservationQuantity.PATH);
        assertThat(observation.doubts()).isEmpty();
    }

    @Test
    void withoutAnyMarkEveryNumberHasItsReason() {
        Observation observation = observe(List.of(), Optional.empty(), false);
        because(
                Reason.NOT_MARKED,
                observation,
                ObservationQuantity.SEEN_LENGTH,
                ObservationQuantity.ANGLE_TO_SKIN,
                ObservationQuantity.DEEPEST_SEEN_DEPTH);
        because(
                Reason.TIP_NOT_CONFIRMED,
                observation,
                ObservationQuantity.TIP_DEPTH,
                ObservationQuantity.PATH,
                ObservationQuantity.TIP_TO_TARGET);
        assertThat(observation.entry()).isEmpty();
    }

    @Test
    void theSeenLengthReachesToTheTipAndTheEntryIsExtrapolatedFromTheShallowestMark() {
        Observation observation = observe(shaft(), Optional.of(fixture.at(0, 30)), false);
        assertThat(value(observation, ObservationQuantity.SEEN_LENGTH)).isCloseTo(Math.hypot(30, 20), within(1e-9));
        assertThat(value(observation, ObservationQuantity.ENTRY_EXTRAPOLATED))
                .isCloseTo(Math.hypot(15, 10), within(1e-9));
        // From the puncture at 45 mm to the tip under the midpoint.
        assertThat(value(observation, ObservationQuantity.ROTATION_BOUND))
                .isCloseTo(Math.toDegrees(Math.asin(0.5 / 45)), within(1e-9));
        because(Reason.NOT_MARKED, observation, ObservationQuantity.BOW);
        because(Reason.TIP_NOT_CONFIRMED, observation, ObservationQuantity.PATH);
    }

    @Test
    void theOrderOfTheMarksDoesNotMatter() {
        Observation one = observe(shaft(), Optional.empty(), false);
        Observation other = observe(List.of(fixture.at(15, 20), fixture.at(30, 10)), Optional.empty(), false);
        for (ObservationQuantity quantity : List.of(
                ObservationQuantity.ANGLE_TO_SKIN,
                ObservationQuantity.SEEN_LENGTH,
                ObservationQuantity.ROTATION_BOUND)) {
            assertThat(value(other, quantity)).as(quantity.field()).isCloseTo(value(one, quantity), within(1e-9));
        }
        assertThat(value(other, ObservationQuantity.ENTRY_DISTANCE)).isCloseTo(45, within(1e-9));
        assertThat(value(other, ObservationQuantity.ENTRY_EXTRAPOLATED)).isCloseTo(Math.hypot(15, 10), within(1e-9));
    }

    @Test
    void anUprightShaftComesFromNeitherSide() {
        fixture.intent(new Intent.EntryDistance(29));
        Comparison comparison =
                compare(fixture.observed(List.of(fixture.at(24, 10), fixture.at(24, 20)), Optional.empty(), false));
        assertThat(value(comparison.observations().get(0), ObservationQuantity.ANGLE_TO_SKIN))
                .isCloseTo(90, within(1e-9));
        assertThat(((Reading.Seen) comparison.deviations().get(0).readings().of(DeviationQuantity.ENTRY_DISTANCE))
                        .value())
                .isCloseTo(-5, within(1e-9));
    }

    @Test
    void aShaftOfOneDegreeMeetsTheSkinAndAFlatterOneDoesNot() {
        double run = 20;
        for (double degrees : new double[] {1.01, 0.99}) {
            double rise = run * Math.tan(Math.toRadians(degrees));
            Observation observation = observe(
                    List.of(fixture.at(run, 10), fixture.at(0, 10 + rise)), Optional.of(fixture.at(0, 30)), true);
            if (degrees > 1) {
                assertThat(value(observation, ObservationQuantity.ANGLE_TO_SKIN))
                        .isCloseTo(degrees, within(1e-6));
            } else {
                because(
                        Reason.SHAFT_PARALLEL_TO_SKIN,
                        observation,
                        ObservationQuantity.ANGLE_TO_SKIN,
                        ObservationQuantity.ENTRY_DISTANCE,
                        ObservationQuantity.ENTRY_EXTRAPOLATED,
                        ObservationQuantity.ROTATION_BOUND,
                        ObservationQuantity.PATH);
            }
        }
    }

    @Test
    void withoutAMidpointTheEntryHasNoDistanceButThePathALength() {
        fixture.midpoint = false;
        fixture.targetU = -4;
        Observation observation = observe(shaft(), Optional.of(fixture.at(0, 30)), true);
        because(Reason.MIDPOINT_NOT_MARKED, observation, ObservationQuantity.ENTRY_DISTANCE);
        assertThat(value(observation, ObservationQuantity.PATH)).isCloseTo(Math.hypot(45, 30), within(1e-9));
        assertThat(value(observation, ObservationQuantity.TIP_TO_TARGET)).isCloseTo(4, within(1e-9));
        assertThat(observation.entry().orElseThrow().distanceTo(fixture.at(45, 0)))
                .isLessThan(1e-6);
    }

    @Test
    void aShaftThatMissesTheRoundLimbHasAnAngleOnly() {
        fixture.skinBeyond = Optional.of(new SkinBeyondProbe.Round(40));
        fixture.targetW = 20;
        // Nearly level and below the limb's middle: on the needle's side it leaves where no skin is described.
        Observation observation =
                observe(List.of(fixture.at(10, 50), fixture.at(0, 51)), Optional.of(fixture.at(0, 51)), true);
        assertThat(value(observation, ObservationQuantity.ANGLE_TO_SKIN)).isBetween(5.0, 6.0);
        because(
                Reason.SHAFT_PARALLEL_TO_SKIN,
                observation,
                ObservationQuantity.ENTRY_DISTANCE,
                ObservationQuantity.ENTRY_EXTRAPOLATED,
                ObservationQuantity.ROTATION_BOUND,
                ObservationQuantity.PATH);
    }

    @Test
    void onAnotherPictureARoundLimbNeedsItsOwnMidpoint() {
        fixture.skinBeyond = Optional.of(new SkinBeyondProbe.Round(60));
        CaseFixture other = new CaseFixture();
        other.rows = 1900;
        ObservationMarks marks =
                fixture.observed(shaft(), Optional.of(fixture.at(0, 30)), true).marks();
        ObservationMarks withSkin = new ObservationMarks(
                marks.id(),
                marks.phase(),
                marks.shaft(),
                marks.tip(),
                marks.tipIsTip(),
                Optional.empty(),
                Optional.empty(),
                other.skinMarks(),
                OptionalDouble.empty());
        Observation observation = observe(new ObservationInput(withSkin, other.frame(), false));
        assertThat(value(observation, ObservationQuantity.ANGLE_TO_SKIN)).isCloseTo(33.690, within(0.0005));
        because(
                Reason.MIDPOINT_NOT_MARKED,
                observation,
                ObservationQuantity.ENTRY_DISTANCE,
                ObservationQuantity.ENTRY_EXTRAPOLATED,
                ObservationQuantity.ROTATION_BOUND,
                ObservationQuantity.PATH);
    }

    @Test
    void withoutSkinAConfirmedTipStillHasItsDistanceFromTheTarget() {
        fixture.skin = false;
        fixture.kind = Optional.empty();
        Observation observation = observe(shaft(), Optional.of(fixture.at(3, 26)), true);
        assertThat(value(observation, ObservationQuantity.TIP_TO_TARGET)).isCloseTo(5, within(1e-9));
        because(
                Reason.SKIN_NOT_MARKED,
                observation,
                ObservationQuantity.ANGLE_TO_SKIN,
                ObservationQuantity.ENTRY_DISTANCE,
                ObservationQuantity.ENTRY_EXTRAPOLATED,
                ObservationQuantity.ROTATION_BOUND,
                ObservationQuantity.DEEPEST_SEEN_DEPTH,
                ObservationQuantity.TIP_DEPTH,
                ObservationQuantity.PATH);
        Observation tipOnly = observe(List.of(), Optional.of(fixture.at(3, 26)), true);
        because(Reason.NOT_MARKED, tipOnly, ObservationQuantity.ANGLE_TO_SKIN);
        because(Reason.SKIN_NOT_MARKED, tipOnly, ObservationQuantity.DEEPEST_SEEN_DEPTH);
        Observation nothing = observe(List.of(), Optional.empty(), false);
        because(Reason.NOT_MARKED, nothing, ObservationQuantity.DEEPEST_SEEN_DEPTH);
    }

    /** GEOMETRY 7: 10 mm of shaft, 0.5 mm marks: standard 4 degrees, expanded 8; 20 mm: 2 and 4. */
    @Test
    void aShaftIsShortWhenItsAngleIsUncertainByMoreThanFiveDegrees() {
        fixture.uncertainty = new InputUncertainty(OptionalDouble.of(10), OptionalDouble.of(0), Optional.empty());
        for (double length : new double[] {10, 20}) {
            double run = length * Math.cos(Math.toRadians(30));
            Observation observation = observe(
                    List.of(fixture.at(20, 10), fixture.at(20 - run, 10 + length / 2)), Optional.empty(), false);
            Reading.Seen angle = (Reading.Seen) observation.readings().of(ObservationQuantity.ANGLE_TO_SKIN);
            assertThat(angle.standardUncertainty())
                    .isCloseTo(Math.toDegrees(Math.sqrt(2) * 0.5 / length), within(0.05));
            assertThat(observation.doubts().contains(Doubt.SHORT_SHAFT)).isEqualTo(length < 15);
        }
    }

    /**
     * A tolerance of 3 mm or 0 %: {@code u = 3 / sqrt 3} on the longest extent that any frame of the case shows, here the
     * shaft's 80 mm across; so the entry at 45 mm is known to 45 / 80 of that, its marks exact.
     */
    @Test
    void aScannersToleranceCountsOverTheLongestExtentOfAllFrames() {
        fixture.intent(new Intent.EntryDistance(45));
        fixture.skin = false;
        List<PointPx> shaft = List.of(fixture.at(36, 6), fixture.at(-44, 6 + 160 / 3.0));
        fixture.uncertainty = new InputUncertainty(
                OptionalDouble.of(1e-6),
                OptionalDouble.empty(),
                Optional.of(new InputUncertainty.ScannerTolerance(3, 0)));
        ObservationInput observed = fixture.observed(shaft, Optional.empty(), false);
        fixture.targetU = 0;
        Observation observation = observe(new ObservationInput(withSkin(observed.marks()), fixture.frame(), true));
        Reading.Seen length = (Reading.Seen) observation.readings().of(ObservationQuantity.SEEN_LENGTH);
        double across = 3 / Math.sqrt(3);
        double down = 3 / Math.sqrt(3);
        // L^2 = x^2 + y^2 with u(x) = u(y) = 3 / sqrt 3 over the extents that are x and y themselves.
        double x = 80;
        double y = 160 / 3.0;
        double expected = Math.hypot(x * across, y * down * y / (y + 6)) / Math.hypot(x, y);
        assertThat(length.standardUncertainty()).isCloseTo(expected, within(1e-4));
    }

    private ObservationMarks withSkin(ObservationMarks marks) {
        return new ObservationMarks(
                marks.id(),
                marks.phase(),
                marks.shaft(),
                marks.tip(),
                marks.tipIsTip(),
                Optional.of(fixture.at(0, 0)),
                Optional.of(fixture.at(0, 30)),
                List.of(fixture.at(-10, 0), fixture.at(10, 0)),
                OptionalDouble.empty());
    }

    @Test
    void theSideIsThatOfTheShallowerEnd() {
        fixture.side = Optional.empty();
        ObservationInput right = fixture.observed(shaft(), Optional.empty(), false);
        assertThat(Observing.sideOf(right, false)).contains(Side.RIGHT);
        assertThat(Observing.sideOf(right, true)).contains(Side.LEFT);
        ObservationInput upright =
                fixture.observed(List.of(fixture.at(10, 10), fixture.at(10, 20)), Optional.empty(), false);
        assertThat(Observing.sideOf(upright, false)).isEmpty();
        assertThat(Observing.sideOf(fixture.observed(List.of(), Optional.empty(), false), false))
                .isEmpty();
    }
}
