// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.deviation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import dev.plumbline.CaseFixture;
import dev.plumbline.geometry.Assumption;
import dev.plumbline.geometry.Doubt;
import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Reading;
import dev.plumbline.geometry.Reason;
import dev.plumbline.observation.Observation;
import dev.plumbline.observation.ObservationInput;
import dev.plumbline.observation.ObservationMarks;
import dev.plumbline.observation.ObservationQuantity;
import dev.plumbline.plan.Approach;
import dev.plumbline.plan.Intent;
import dev.plumbline.plan.PlanQuantity;
import dev.plumbline.problem.Refusal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class ComparisonTest {
    private final CaseFixture fixture = new CaseFixture();

    private Comparison compare(ObservationInput... observed) {
        return Comparison.of(fixture.input(), List.of(observed));
    }

    private static double value(Reading reading) {
        return ((Reading.Seen) reading).value();
    }

    private static Reason reason(Reading reading) {
        return ((Reading.NotSeen) reading).reason();
    }

    private static double observed(Comparison comparison, ObservationQuantity quantity) {
        return value(comparison.observations().get(0).readings().of(quantity));
    }

    private static Reading deviation(Comparison comparison, DeviationQuantity quantity) {
        return comparison.deviations().get(0).readings().of(quantity);
    }

    /** On another picture with equal geometry, or with the geometry given. */
    private ObservationInput elsewhere(ObservationInput input, FrameGeometry frame) {
        return new ObservationInput(input.marks(), frame, false);
    }

    /** GEOMETRY 2: a side that nobody stated is that of the first shaft, also where the plan alone is asked for. */
    @Test
    void thePlanAloneIsThePlanOfTheComparison() {
        fixture.side = Optional.empty();
        fixture.intent(new Intent.EntryDistance(45));
        ObservationInput observed =
                fixture.observed(List.of(fixture.at(30, 10), fixture.at(15, 20)), Optional.of(fixture.at(0, 30)), true);
        Comparison alone = Comparison.planOnly(fixture.input(), List.of(observed));
        assertThat(alone.plan()).isEqualTo(compare(observed).plan());
        assertThat(alone.observations()).isEmpty();
        assertThat(catchThrowableOfType(Refusal.class, () -> Comparison.planOnly(fixture.input(), List.of()))
                        .problem()
                        .pointer())
                .isEqualTo("/probe/needleSide");
    }

    @Test
    void anExactObservationDiffersByNothing() {
        fixture.intent(new Intent.EntryDistance(45));
        Comparison comparison = compare(fixture.observed(
                List.of(fixture.at(30, 10), fixture.at(15, 20)), Optional.of(fixture.at(0, 30)), true));
        for (DeviationQuantity quantity :
                comparison.deviations().get(0).readings().measurands()) {
            Reading.Seen difference = (Reading.Seen) deviation(comparison, quantity);
            assertThat(difference.value()).as(quantity.field()).isCloseTo(0, within(1e-9));
            assertThat(difference.exceedsUncertainty()).isFalse();
        }
        assertThat(comparison.deviations().get(0).readings().measurands())
                .containsExactly(
                        DeviationQuantity.ANGLE_TO_SKIN,
                        DeviationQuantity.ENTRY_DISTANCE,
                        DeviationQuantity.TIP_DEPTH,
                        DeviationQuantity.PATH,
                        DeviationQuantity.ALONG_PLAN,
                        DeviationQuantity.ACROSS_PLAN);
        assertThat(observed(comparison, ObservationQuantity.ENTRY_EXTRAPOLATED))
                .isCloseTo(Math.hypot(15, 10), within(1e-9));
        assertThat(comparison.observations().get(0).entry().orElseThrow().distanceTo(fixture.at(45, 0)))
                .isLessThan(1e-6);
    }

    /** GEOMETRY worked values: shaft (100,100)->(200,150) px at 0.2 mm per pixel, then at half the row size. */
    @Test
    void shaftAngleUsesBothPixelSizes() {
        fixture.mmPerColumn = 0.2;
        fixture.mmPerRow = 0.2;
        fixture.targetW = 100;
        fixture.intent(new Intent.AngleToSkin(30));
        List<PointPx> shaft = List.of(new PointPx(100, 100), new PointPx(200, 150));
        Comparison square = compare(fixture.observed(shaft, Optional.empty(), false));
        assertThat(observed(square, ObservationQuantity.ANGLE_TO_SKIN)).isCloseTo(26.565, within(0.0005));
        assertThat(observed(square, ObservationQuantity.SEEN_LENGTH)).isCloseTo(22.361, within(0.0005));
        fixture.mmPerRow = 0.1;
        Comparison flat = compare(fixture.observed(shaft, Optional.empty(), false));
        assertThat(observed(flat, ObservationQuantity.ANGLE_TO_SKIN)).isCloseTo(14.036, within(0.0005));
    }

    @Test
    void theDeepestSeenPartIsNotTheTipUnlessSaid() {
        Comparison comparison = compare(fixture.observed(
                List.of(fixture.at(30, 10), fixture.at(15, 20)), Optional.of(fixture.at(0, 30)), false));
        Observation observation = comparison.observations().get(0);
        assertThat(observed(comparison, ObservationQuantity.DEEPEST_SEEN_DEPTH)).isCloseTo(30, within(1e-9));
        for (ObservationQuantity quantity :
                List.of(ObservationQuantity.TIP_DEPTH, ObservationQuantity.PATH, ObservationQuantity.TIP_TO_TARGET)) {
            assertThat(reason(observation.readings().of(quantity))).isEqualTo(Reason.TIP_NOT_CONFIRMED);
        }
        assertThat(observation.assumptions()).contains(Assumption.SEEN_END_MAY_BE_SHAFT);
        assertThat(reason(deviation(comparison, DeviationQuantity.ALONG_PLAN))).isEqualTo(Reason.TIP_NOT_CONFIRMED);
        assertThat(deviation(comparison, DeviationQuantity.ANGLE_TO_SKIN)).isInstanceOf(Reading.Seen.class);
    }

    @Test
    void aNeedleFromTheOtherSideHasAnAngleButNoDeviation() {
        Comparison comparison = compare(fixture.observed(
                List.of(fixture.at(-30, 10), fixture.at(-15, 20)), Optional.of(fixture.at(0, 30)), true));
        assertThat(observed(comparison, ObservationQuantity.ANGLE_TO_SKIN)).isCloseTo(33.690, within(0.0005));
        assertThat(observed(comparison, ObservationQuantity.TIP_DEPTH)).isCloseTo(30, within(1e-9));
        for (DeviationQuantity quantity : List.of(
                DeviationQuantity.ANGLE_TO_SKIN,
                DeviationQuantity.ENTRY_DISTANCE,
                DeviationQuantity.TIP_DEPTH,
                DeviationQuantity.PATH,
                DeviationQuantity.ALONG_PLAN,
                DeviationQuantity.ACROSS_PLAN)) {
            assertThat(reason(deviation(comparison, quantity))).isEqualTo(Reason.OTHER_SIDE);
        }
    }

    @Test
    void aShaftParallelToTheSkinMeetsItNowhere() {
        Comparison comparison =
                compare(fixture.observed(List.of(fixture.at(30, 20), fixture.at(0, 20.2)), Optional.empty(), false));
        Observation observation = comparison.observations().get(0);
        assertThat(reason(observation.readings().of(ObservationQuantity.ANGLE_TO_SKIN)))
                .isEqualTo(Reason.SHAFT_PARALLEL_TO_SKIN);
        assertThat(observation.entry()).isEmpty();
        assertThat(observed(comparison, ObservationQuantity.DEEPEST_SEEN_DEPTH)).isCloseTo(20.2, within(1e-9));
    }

    @Test
    void alongIsBeyondAndAcrossIsDeeper() {
        fixture.intent(new Intent.EntryDistance(30));
        double half = Math.sqrt(0.5);
        Comparison beyond = compare(fixture.observed(
                List.of(fixture.at(20, 10), fixture.at(10, 20)),
                Optional.of(fixture.at(-2 * half, 30 + 2 * half)),
                true));
        assertThat(value(deviation(beyond, DeviationQuantity.ALONG_PLAN))).isCloseTo(2, within(1e-9));
        assertThat(value(deviation(beyond, DeviationQuantity.ACROSS_PLAN))).isCloseTo(0, within(1e-9));
        Comparison deeper = compare(fixture.observed(
                List.of(fixture.at(20, 10), fixture.at(10, 20)), Optional.of(fixture.at(half, 30 + half)), true));
        assertThat(value(deviation(deeper, DeviationQuantity.ALONG_PLAN))).isCloseTo(0, within(1e-9));
        assertThat(value(deviation(deeper, DeviationQuantity.ACROSS_PLAN))).isCloseTo(1, within(1e-9));
    }

    @Test
    void anotherPictureOfEqualGeometryInheritsAndSaysSo() {
        fixture.intent(new Intent.EntryDistance(45));
        ObservationInput same =
                fixture.observed(List.of(fixture.at(30, 10), fixture.at(15, 20)), Optional.of(fixture.at(0, 30)), true);
        Comparison comparison = compare(elsewhere(same, fixture.frame()));
        assertThat(comparison.observations().get(0).assumptions())
                .contains(Assumption.PROBE_NOT_MOVED, Assumption.TARGET_DID_NOT_MOVE);
        Observation.CarriedPlan carried =
                comparison.observations().get(0).carriedPlan().orElseThrow();
        assertThat(carried.entry().distanceTo(fixture.at(45, 0))).isLessThan(1e-6);
        assertThat(carried.target().distanceTo(fixture.at(0, 30))).isLessThan(1e-6);
        Comparison samePicture = compare(same);
        assertThat(samePicture.observations().get(0).assumptions()).doesNotContain(Assumption.PROBE_NOT_MOVED);
        assertThat(samePicture.observations().get(0).carriedPlan()).isEmpty();
    }

    @Test
    void aPictureOfOtherGeometryInheritsNothing() {
        ObservationInput same =
                fixture.observed(List.of(fixture.at(30, 10), fixture.at(15, 20)), Optional.of(fixture.at(0, 30)), true);
        CaseFixture other = new CaseFixture();
        other.rows = 1900;
        Comparison comparison = compare(elsewhere(same, other.frame()));
        Observation observation = comparison.observations().get(0);
        assertThat(reason(observation.readings().of(ObservationQuantity.ANGLE_TO_SKIN)))
                .isEqualTo(Reason.SKIN_NOT_MARKED);
        assertThat(reason(observation.readings().of(ObservationQuantity.TIP_TO_TARGET)))
                .isEqualTo(Reason.TARGET_NOT_MARKED);
        assertThat(observed(comparison, ObservationQuantity.SEEN_LENGTH)).isPositive();
        assertThat(observation.carriedPlan()).isEmpty();
    }

    @Test
    void aPlanIsCarriedToAnotherScaleByItsOwnMarks() {
        fixture.intent(new Intent.EntryDistance(45));
        CaseFixture zoomed = new CaseFixture();
        zoomed.mmPerColumn = 0.1;
        zoomed.mmPerRow = 0.1;
        ObservationInput plain =
                zoomed.observed(List.of(zoomed.at(30, 10), zoomed.at(15, 20)), Optional.of(zoomed.at(0, 30)), true);
        ObservationMarks marks = plain.marks();
        ObservationMarks own = new ObservationMarks(
                marks.id(),
                marks.phase(),
                marks.shaft(),
                marks.tip(),
                marks.tipIsTip(),
                Optional.of(zoomed.at(0, 0)),
                Optional.empty(),
                zoomed.skinMarks(),
                OptionalDouble.empty());
        Comparison comparison = compare(new ObservationInput(own, zoomed.frame(), false));
        Observation observation = comparison.observations().get(0);
        assertThat(observation.carriedPlan().orElseThrow().entry().distanceTo(zoomed.at(45, 0)))
                .isLessThan(1e-6);
        assertThat(value(deviation(comparison, DeviationQuantity.ENTRY_DISTANCE)))
                .isCloseTo(0, within(1e-9));
        assertThat(reason(deviation(comparison, DeviationQuantity.ALONG_PLAN))).isEqualTo(Reason.TARGET_NOT_MARKED);
    }

    @Test
    void aShortShaftIsDoubtedFirst() {
        Comparison comparison =
                compare(fixture.observed(List.of(fixture.at(15, 20), fixture.at(14.2, 20.5)), Optional.empty(), false));
        assertThat(comparison.observations().get(0).doubts()).startsWith(Doubt.SHORT_SHAFT);
    }

    @Test
    void aTipBesideTheShaftIsDoubted() {
        Comparison comparison = compare(fixture.observed(
                List.of(fixture.at(30, 10), fixture.at(15, 20)), Optional.of(fixture.at(8, 27)), true));
        assertThat(comparison.observations().get(0).doubts()).contains(Doubt.TIP_OFF_SHAFT);
    }

    @Test
    void aBentShaftIsFittedAndItsBowGiven() {
        Comparison comparison = compare(fixture.observed(
                List.of(fixture.at(30, 10), fixture.at(20, 15.5), fixture.at(10, 20)), Optional.empty(), false));
        assertThat(observed(comparison, ObservationQuantity.BOW)).isBetween(0.2, 0.4);
        assertThat(observed(comparison, ObservationQuantity.ANGLE_TO_SKIN)).isCloseTo(26.565, within(0.05));
    }

    /** asin(b / (2 s cos a)) with b 1 mm and 30 mm of run from the puncture to the last seen point. */
    @Test
    void theVisiblePartBoundsTheProbesRotation() {
        Comparison comparison =
                compare(fixture.observed(List.of(fixture.at(30, 10), fixture.at(15, 20)), Optional.empty(), false));
        assertThat(observed(comparison, ObservationQuantity.ROTATION_BOUND))
                .isCloseTo(Math.toDegrees(Math.asin(0.5 / 30)), within(1e-9));
        assertThat(comparison.observations().get(0).rotationWords().orElseThrow())
                .contains("up to 1\u00b0", "nudge each way");
        Comparison tipKnown = compare(fixture.observed(
                List.of(fixture.at(30, 10), fixture.at(15, 20)), Optional.of(fixture.at(0, 30)), true));
        assertThat(tipKnown.observations().get(0).rotationWords()).isEmpty();
        Comparison upright =
                compare(fixture.observed(List.of(fixture.at(10, 10), fixture.at(10, 20)), Optional.empty(), false));
        assertThat(reason(upright.observations().get(0).readings().of(ObservationQuantity.ROTATION_BOUND)))
                .isEqualTo(Reason.VERTICAL_PATH);
    }

    @Test
    void refusesMarksThatMeasureNothing() {
        refusesAt("/observations/0/shaft", fixture.observed(List.of(fixture.at(30, 10)), Optional.empty(), false));
        refusesAt(
                "/observations/0/shaft",
                fixture.observed(List.of(fixture.at(30, 10), fixture.at(30.05, 10)), Optional.empty(), false));
        refusesAt(
                "/observations/0/tip",
                fixture.observed(
                        List.of(fixture.at(30, 10), fixture.at(15, 20)), Optional.of(new PointPx(-1, 50)), true));
        fixture.approach = Approach.OUT_OF_PLANE;
        refusesAt(
                "/observations/0/shaft",
                fixture.observed(List.of(fixture.at(30, 10), fixture.at(15, 20)), Optional.empty(), false));
    }

    private void refusesAt(String pointer, ObservationInput observed) {
        Refusal refusal = catchThrowableOfType(Refusal.class, () -> compare(observed));
        assertThat(refusal).as(pointer).isNotNull();
        assertThat(refusal.problem().pointer()).isEqualTo(pointer);
    }

    @Test
    void theSideIsTakenFromTheFirstShaft() {
        fixture.side = Optional.empty();
        fixture.intent(new Intent.EntryDistance(45));
        Comparison comparison = compare(fixture.observed(
                List.of(fixture.at(15, 20), fixture.at(30, 10)), Optional.of(fixture.at(0, 30)), true));
        assertThat(value(comparison.plan().readings().of(PlanQuantity.ENTRY_DISTANCE)))
                .isEqualTo(45);
        assertThat(value(deviation(comparison, DeviationQuantity.ENTRY_DISTANCE)))
                .isCloseTo(0, within(1e-9));
    }

    @Test
    void outOfPlaneTheDotIsACrossingAndNotATip() {
        fixture.approach = Approach.OUT_OF_PLANE;
        fixture.targetW = 20;
        ObservationInput plain = fixture.observed(List.of(), Optional.of(fixture.at(0, 18)), false);
        ObservationMarks marks = plain.marks();
        ObservationMarks measured = new ObservationMarks(
                marks.id(),
                marks.phase(),
                List.of(),
                marks.tip(),
                Optional.of(false),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                OptionalDouble.of(20));
        Comparison comparison = compare(new ObservationInput(measured, fixture.frame(), true));
        assertThat(observed(comparison, ObservationQuantity.CROSSING_DEPTH)).isCloseTo(18, within(1e-9));
        assertThat(observed(comparison, ObservationQuantity.ANGLE_TO_SKIN))
                .isCloseTo(Math.toDegrees(Math.atan2(18, 20)), within(1e-9));
        assertThat(value(deviation(comparison, DeviationQuantity.CROSSING_DEPTH)))
                .isCloseTo(-2, within(1e-9));
        assertThat(value(deviation(comparison, DeviationQuantity.PUNCTURE_DISTANCE)))
                .isCloseTo(0, within(1e-9));
        assertThat(reason(deviation(comparison, DeviationQuantity.TIP_DEPTH))).isEqualTo(Reason.TIP_NOT_CONFIRMED);
    }
}
