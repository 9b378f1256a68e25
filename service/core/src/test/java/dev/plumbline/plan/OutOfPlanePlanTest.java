// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.plumbline.CaseFixture;
import dev.plumbline.geometry.Assumption;
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
}
