// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.plumbline.CaseFixture;
import dev.plumbline.geometry.Assumption;
import dev.plumbline.geometry.Doubt;
import dev.plumbline.geometry.InputUncertainty;
import dev.plumbline.geometry.Reading;
import dev.plumbline.geometry.Reason;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class OutOfPlanePlanTest {
    private static final double HALF_LAST_DIGIT = 0.0005;

    private final CaseFixture fixture = new CaseFixture();

    @BeforeEach
    void across() {
        fixture.approach = Approach.OUT_OF_PLANE;
        fixture.side = Optional.empty();
    }

    private OutOfPlanePlan plan() {
        return (OutOfPlanePlan) Plan.of(fixture.input());
    }

    private static double value(Reading reading) {
        return ((Reading.Seen) reading).value();
    }

    private void isAbout(OutOfPlanePlan plan, PlanQuantity quantity, double expected) {
        assertThat(value(plan.readings().of(quantity)))
                .as(quantity.field())
                .isCloseTo(expected, within(HALF_LAST_DIGIT));
    }

    /** GEOMETRY worked values: 45 degrees, d = 20 crosses at 20.000. */
    @Test
    void distanceEqualsDepthAt45Degrees() {
        fixture.targetW = 20;
        OutOfPlanePlan plan = plan();
        isAbout(plan, PlanQuantity.PUNCTURE_DISTANCE, 20);
        isAbout(plan, PlanQuantity.ANGLE_TO_SKIN, 45);
        isAbout(plan, PlanQuantity.PATH, 28.284);
        isAbout(plan, PlanQuantity.ALONG_PROBE, 0);
        assertThat(plan.steep()).isFalse();
        assertThat(plan.feasible()).isTrue();
        assertThat(plan.judgement().unchecked())
                .containsExactly(Limit.of(Limit.Kind.HOUSING), Limit.of(Limit.Kind.REACH));
        assertThat(plan.judgement().assumptions())
                .containsExactly(Assumption.NEEDLE_STRAIGHT, Assumption.BEAM_PERPENDICULAR_TO_SKIN);
    }

    /** GEOMETRY worked values: d = 15, depth 50. */
    @Test
    void aDeepTargetIsApproachedSteeply() {
        fixture.targetW = 50;
        OutOfPlanePlan plan = plan();
        assertThat(plan.steep()).isTrue();
        isAbout(plan, PlanQuantity.PUNCTURE_DISTANCE, 15);
        isAbout(plan, PlanQuantity.ANGLE_TO_SKIN, 73.301);
        isAbout(plan, PlanQuantity.PATH, 52.202);
        assertThat(plan.rows()).hasSize(2);
        assertThat(value(plan.rows().get(0).readings().of(PlanQuantity.PUNCTURE_DISTANCE)))
                .isCloseTo(50, within(1e-9));
    }

    /** FACTS 1.4, plain right triangle: from 20 mm away crossing depths 5 to 30 mm. */
    @Test
    void stepsDownThroughTheCrossingDepths() {
        fixture.targetW = 30;
        fixture.intent(new Intent.PunctureDistance(20));
        List<OutOfPlanePlan.Step> steps = plan().stepDown();
        double[] degrees = {14.036, 26.565, 36.870, 45, 51.340, 56.310};
        assertThat(steps).hasSize(6);
        for (int i = 0; i < 6; i++) {
            assertThat(steps.get(i).crossingDepthMm().value()).isCloseTo(5 * (i + 1), within(1e-9));
            assertThat(steps.get(i).angleToSkinDeg().value()).isCloseTo(degrees[i], within(HALF_LAST_DIGIT));
        }
    }

    @Test
    void aPunctureFartherThanAllowedIsNamedWithANearerOne() {
        fixture.targetW = 35;
        fixture.intent(new Intent.PunctureDistance(35));
        OutOfPlanePlan plan = plan();
        assertThat(plan.feasible()).isFalse();
        assertThat(plan.judgement().binding()).containsExactly(Limit.of(Limit.Kind.PUNCTURE_DISTANCE));
        assertThat(plan.rows().get(0).why()).containsExactly(Limit.of(Limit.Kind.PUNCTURE_DISTANCE));
        WayOut nearer = plan.waysOut().get(0);
        assertThat(nearer.kind()).isEqualTo(WayOut.Kind.STEEPER);
        assertThat(value(nearer.readings().of(PlanQuantity.PUNCTURE_DISTANCE))).isCloseTo(30, within(1e-9));
        fixture.intent(new Intent.PunctureDistance(30));
        assertThat(plan().feasible()).isTrue();
    }

    /** Too shallow for the steep row and, at a flat angle, too far away for the usual one. */
    @Test
    void withoutARowThatFitsTheNearestPunctureIsOffered() {
        fixture.targetW = 14;
        fixture.constraints = new ConstraintsFixture().outOfPlaneAngle(20).build();
        OutOfPlanePlan plan = plan();
        assertThat(plan.feasible()).isFalse();
        assertThat(plan.judgement().binding()).containsExactly(Limit.of(Limit.Kind.PUNCTURE_DISTANCE));
        assertThat(plan.waysOut()).extracting(WayOut::kind).containsExactly(WayOut.Kind.STEEPER);
        assertThat(plan.text()).contains("Nearer to the probe, puncture 30 mm from the beam");
    }

    /** The farthest puncture that a 30 mm needle with 10 mm in reserve reaches at 15 mm depth: sqrt(20^2 - 15^2). */
    @Test
    void aShortNeedleIsOfferedANearerPuncture() {
        fixture.targetW = 15;
        fixture.needleLength = OptionalDouble.of(30);
        fixture.intent(new Intent.PunctureDistance(20));
        OutOfPlanePlan plan = plan();
        assertThat(plan.judgement().binding()).containsExactly(Limit.of(Limit.Kind.REACH));
        assertThat(plan.waysOut())
                .extracting(WayOut::kind)
                .containsExactly(WayOut.Kind.STEEPER, WayOut.Kind.LONGER_NEEDLE);
        assertThat(value(plan.waysOut().get(0).readings().of(PlanQuantity.PUNCTURE_DISTANCE)))
                .isCloseTo(Math.sqrt(175), within(1e-9));
        assertThat(value(plan.waysOut().get(1).readings().of(PlanQuantity.SHORTEST_NEEDLE)))
                .isCloseTo(35, within(1e-9));
    }

    @Test
    void noNeedleLongerThanThereAreIsOffered() {
        fixture.targetW = 95;
        fixture.needleLength = OptionalDouble.of(100);
        fixture.constraints = new ConstraintsFixture().maxPuncture(200).build();
        fixture.intent(new Intent.PunctureDistance(120));
        assertThat(plan().waysOut()).isEmpty();
    }

    @Test
    void theStepsCarryWhatIsUncertainOfThem() {
        fixture.targetW = 12;
        fixture.intent(new Intent.PunctureDistance(20));
        List<OutOfPlanePlan.Step> steps = plan().stepDown();
        assertThat(steps.get(0).angleToSkinDeg().standardUncertainty()).isZero();
        assertThat(steps.get(0).crossingDepthMm().standardUncertainty()).isZero();
        OutOfPlanePlan.Step last = steps.get(steps.size() - 1);
        Reading.Seen depth = (Reading.Seen) plan().readings().of(PlanQuantity.TARGET_DEPTH);
        assertThat(last.crossingDepthMm()).isEqualTo(depth);
        // d(atan(w / 20)) = 20 / (20^2 + 12^2) dw
        assertThat(last.angleToSkinDeg().standardUncertainty())
                .isCloseTo(Math.toDegrees(20 / 544.0 * depth.standardUncertainty()), within(1e-9));
    }

    @Test
    void theLastStepIsTheTarget() {
        fixture.targetW = 12;
        assertThat(plan().stepDown().stream().map(step -> step.crossingDepthMm().value()))
                .hasSize(3)
                .last()
                .matches(depth -> Math.abs(depth - 12) < 1e-9);
    }

    @Test
    void aShortNeedleMakesItSteep() {
        fixture.targetW = 28;
        fixture.needleLength = OptionalDouble.of(45);
        OutOfPlanePlan plan = plan();
        assertThat(plan.steep()).isTrue();
        assertThat(plan.feasible()).isTrue();
        assertThat(plan.rows().get(0).why()).containsExactly(Limit.of(Limit.Kind.REACH));
    }

    @Test
    void aTooShortNeedleIsAnAnswerWithItsWayOut() {
        fixture.targetW = 40;
        fixture.needleLength = OptionalDouble.of(50);
        OutOfPlanePlan plan = plan();
        assertThat(plan.feasible()).isFalse();
        assertThat(plan.readings().of(PlanQuantity.PATH)).isEqualTo(new Reading.NotSeen(Reason.INFEASIBLE));
        isAbout(plan, PlanQuantity.TARGET_DEPTH, 40);
        assertThat(plan.judgement().binding()).containsExactly(Limit.of(Limit.Kind.REACH));
        assertThat(plan.waysOut()).hasSize(1);
        assertThat(plan.waysOut().get(0).kind()).isEqualTo(WayOut.Kind.LONGER_NEEDLE);
        assertThat(value(plan.waysOut().get(0).readings().of(PlanQuantity.SHORTEST_NEEDLE)))
                .isCloseTo(Math.hypot(15, 40) + 10, within(1e-9));
    }

    @Test
    void theHousingForbidsAShortDistance() {
        fixture.targetW = 10;
        fixture.housingHalfThickness = OptionalDouble.of(8);
        OutOfPlanePlan plan = plan();
        assertThat(plan.feasible()).isFalse();
        assertThat(plan.judgement().binding()).containsExactly(Limit.of(Limit.Kind.HOUSING));
        assertThat(value(plan.waysOut().get(0).readings().of(PlanQuantity.PUNCTURE_DISTANCE)))
                .isEqualTo(13);
        fixture.targetW = 14;
        OutOfPlanePlan farther = plan();
        assertThat(farther.feasible()).isTrue();
        isAbout(farther, PlanQuantity.PUNCTURE_FROM_PROBE_EDGE, 6);
    }

    @Test
    void alongTheProbeNeedsTheMidpoint() {
        fixture.targetU = 4;
        isAbout(plan(), PlanQuantity.ALONG_PROBE, 4);
        fixture.midpoint = false;
        assertThat(plan().readings().of(PlanQuantity.ALONG_PROBE))
                .isEqualTo(new Reading.NotSeen(Reason.MIDPOINT_NOT_MARKED));
    }

    @Test
    void aStatedDistanceIsExact() {
        fixture.targetW = 20;
        fixture.intent(new Intent.PunctureDistance(17));
        Reading.Seen distance = (Reading.Seen) plan().readings().of(PlanQuantity.PUNCTURE_DISTANCE);
        assertThat(distance.value()).isEqualTo(17);
        assertThat(distance.standardUncertainty()).isZero();
        Reading.Seen angle = (Reading.Seen) plan().readings().of(PlanQuantity.ANGLE_TO_SKIN);
        assertThat(angle.standardUncertainty()).isPositive();
    }

    @Test
    void saysItInWords() {
        fixture.targetW = 20;
        fixture.needleLength = OptionalDouble.of(50);
        assertThat(plan().text())
                .isEqualTo(
                        "Puncture 20 mm from the beam, level with the probe's middle, about 45\u00b0 (1 along, 1 down):"
                                + " the needle crosses the beam 20 mm deep, at the target. 28 mm of needle to the target: a 50 mm"
                                + " needle leaves 22 mm outside. What lies between puncture and beam was not seen.");
    }

    /** Within 30 mm there is no room for this housing, so that nothing nearer can be offered. */
    @Test
    void aNearerPunctureUnderTheHousingIsNotOffered() {
        fixture.targetW = 35;
        fixture.housingHalfThickness = OptionalDouble.of(28);
        fixture.intent(new Intent.PunctureDistance(40));
        assertThat(plan().waysOut()).isEmpty();
        fixture.housingHalfThickness = OptionalDouble.of(25);
        assertThat(plan().waysOut()).extracting(WayOut::kind).containsExactly(WayOut.Kind.STEEPER);
    }

    @Test
    void withoutSkinOnlyWhatWasStatedIsKnown() {
        fixture.skin = false;
        fixture.kind = Optional.empty();
        fixture.intent(new Intent.PunctureDistance(20));
        OutOfPlanePlan plan = plan();
        isAbout(plan, PlanQuantity.PUNCTURE_DISTANCE, 20);
        assertThat(plan.readings().of(PlanQuantity.ANGLE_TO_SKIN))
                .isEqualTo(new Reading.NotSeen(Reason.SKIN_NOT_MARKED));
        assertThat(plan.source()).isEqualTo(Plan.Source.STATED);
        assertThat(plan.feasible()).isFalse();
        assertThat(plan.judgement().unchecked())
                .containsExactly(Limit.of(Limit.Kind.HOUSING), Limit.of(Limit.Kind.REACH));
        fixture.intent = Optional.empty();
        assertThat(plan().source()).isEqualTo(Plan.Source.PROPOSED);
        assertThat(plan().readings().of(PlanQuantity.PUNCTURE_DISTANCE))
                .isEqualTo(new Reading.NotSeen(Reason.SKIN_NOT_MARKED));
    }

    @Test
    void aLinearArraysAssumedSkinIsDoubted() {
        fixture.targetW = 15;
        fixture.skin = false;
        assertThat(plan().judgement().doubts()).containsExactly(Doubt.SKIN_ASSUMED, Doubt.MIDPOINT_OFF_SKIN);
        fixture.skin = true;
        assertThat(plan().judgement().doubts()).isEmpty();
    }

    @Test
    void theWordsSayWhereThePunctureLies() {
        fixture.targetW = 20;
        fixture.targetU = 4;
        fixture.housingHalfThickness = OptionalDouble.of(12);
        assertThat(plan().text())
                .startsWith(
                        "Puncture 20 mm from the beam (8 mm from the housing's edge), 4 mm along the probe from its middle,"
                                + " about 45\u00b0 (1 along, 1 down): the needle crosses the beam 20 mm deep, at the target. 28 mm of"
                                + " needle to the target; with reserve a needle of at least 39 mm.");
        fixture.midpoint = false;
        assertThat(plan().text()).startsWith("Puncture 20 mm from the beam (8 mm from the housing's edge), about 45");
        fixture.intent(new Intent.PunctureDistance(10));
        fixture.needleLength = OptionalDouble.of(20);
        assertThat(plan().text())
                .startsWith(
                        "This path does not fit the limits you set, for what you marked: the probe's housing stands in the"
                                + " way; the needle does not reach with its reserve. Puncture 10 mm from the beam (2 mm inside the"
                                + " housing's edge), about 65\u00b0 (1 along, 2 down)")
                .contains("22 mm of needle to the target: a 20 mm needle is too short by 2 mm. What lies between");
    }

    @Test
    void withoutAPunctureTheWordsSayWhatWouldChangeThat() {
        fixture.targetW = 40;
        fixture.needleLength = OptionalDouble.of(50);
        assertThat(plan().text())
                .isEqualTo(
                        "No puncture fits the limits you set, for what you marked: the needle does not reach with its"
                                + " reserve. A needle of at least 53 mm, puncture 15 mm from the beam, about 70\u00b0.");
    }

    /** The limits themselves are allowed: 30 mm away, a needle that just reaches, the housing just passed. */
    @Test
    void onALimitThePathFits() {
        fixture.targetW = 40;
        fixture.intent(new Intent.PunctureDistance(30));
        fixture.needleLength = OptionalDouble.of(60);
        fixture.housingHalfThickness = OptionalDouble.of(25);
        assertThat(plan().feasible()).isTrue();
        fixture.needleLength = OptionalDouble.of(59.9);
        assertThat(plan().judgement().binding()).containsExactly(Limit.of(Limit.Kind.REACH));
    }

    /**
     * A tolerance of 3 mm over the longest extent that skin, target and midpoint span: 30 mm across, 12 mm down; a
     * rectangular distribution has 3 / sqrt 3.
     */
    @Test
    void aScannersToleranceCountsOverTheExtentOfThePlannedMarks() {
        fixture.targetU = -20;
        fixture.targetW = 12;
        fixture.uncertainty = new InputUncertainty(
                OptionalDouble.of(1e-6),
                OptionalDouble.empty(),
                Optional.of(new InputUncertainty.ScannerTolerance(3, 0)));
        PlanInput input = fixture.input();
        PlanMarks marks = new PlanMarks(
                input.marks().target(),
                Optional.empty(),
                List.of(fixture.at(-30, 0), fixture.at(-10, 0)),
                List.of(),
                List.of());
        Plan plan = Plan.of(new PlanInput(
                input.approach(),
                input.frame(),
                input.probe(),
                marks,
                input.needle(),
                input.intent(),
                input.constraints(),
                input.uncertainty()));
        Reading.Seen along = (Reading.Seen) plan.readings().of(PlanQuantity.ALONG_PROBE);
        assertThat(along.standardUncertainty()).isCloseTo(20 / 30.0 * Math.sqrt(3), within(1e-4));
        Reading.Seen depth = (Reading.Seen) plan.readings().of(PlanQuantity.TARGET_DEPTH);
        assertThat(depth.standardUncertainty()).isCloseTo(Math.sqrt(3), within(1e-4));
        Reading.Seen imaging = (Reading.Seen) SetUp.of(plan).imagingDepthMm();
        assertThat(imaging.standardUncertainty()).isCloseTo(2 * Math.sqrt(3), within(1e-4));
    }
}
