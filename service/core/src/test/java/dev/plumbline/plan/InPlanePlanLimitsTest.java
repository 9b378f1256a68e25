// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.plumbline.CaseFixture;
import dev.plumbline.geometry.Reading;
import dev.plumbline.geometry.Readings;
import dev.plumbline.geometry.Reason;
import dev.plumbline.plan.Constraints.Band;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Limits of an in-plane plan: what is proposed within them, which of them binds, and the ways out. */
class InPlanePlanLimitsTest {
    private static final double HALF_LAST_DIGIT = 0.0005;
    private final CaseFixture fixture = new CaseFixture();

    private InPlanePlan plan() {
        return (InPlanePlan) Plan.of(fixture.input());
    }

    private static double value(Readings<PlanQuantity> readings, PlanQuantity quantity) {
        return ((Reading.Seen) readings.of(quantity)).value();
    }

    private static Reason reason(Readings<PlanQuantity> readings, PlanQuantity quantity) {
        return ((Reading.NotSeen) readings.of(quantity)).reason();
    }

    private void isAbout(InPlanePlan plan, PlanQuantity quantity, double expected) {
        assertThat(value(plan.readings(), quantity)).as(quantity.field()).isCloseTo(expected, within(HALF_LAST_DIGIT));
    }

    @Test
    void proposesTheFlattestEntryOfTheBand() {
        InPlanePlan plan = plan();
        isAbout(plan, PlanQuantity.ANGLE_TO_SKIN, 30);
        isAbout(plan, PlanQuantity.ENTRY_DISTANCE, 51.962);
        assertThat(plan.inBand()).isTrue();
        assertThat(value(plan.choices().flattest().orElseThrow().readings(), PlanQuantity.ANGLE_TO_SKIN))
                .isCloseTo(30, within(1e-9));
        assertThat(value(plan.choices().steepest().orElseThrow().readings(), PlanQuantity.ANGLE_TO_SKIN))
                .isCloseTo(45, within(1e-9));
    }

    @Test
    void proposesTheSteepestEntryOfTheBandForAShortPath() {
        fixture.constraints = new ConstraintsFixture()
                .prefer(Constraints.Preference.SHORT_PATH)
                .build();
        isAbout(plan(), PlanQuantity.ANGLE_TO_SKIN, 45);
    }

    @Test
    void needleLengthBoundsTheFlattestEntry() {
        fixture.needleLength = OptionalDouble.of(60);
        InPlanePlan plan = plan();
        isAbout(plan, PlanQuantity.PATH, 50);
        isAbout(plan, PlanQuantity.ENTRY_DISTANCE, 40);
        isAbout(plan, PlanQuantity.NEEDLE_LEFT, 10);
        assertThat(plan.choices().feasibleEntries()).hasSize(1);
        assertThat(plan.choices().feasibleEntries().get(0).low()).isEqualTo(24);
        assertThat(plan.choices().feasibleEntries().get(0).high()).isCloseTo(40, within(1e-9));
    }

    @Test
    void tooShortANeedleIsAnAnswerWithItsWayOut() {
        fixture.needleLength = OptionalDouble.of(45);
        InPlanePlan plan = plan();
        assertThat(plan.feasible()).isFalse();
        assertThat(plan.line()).isEmpty();
        assertThat(reason(plan.readings(), PlanQuantity.ANGLE_TO_SKIN)).isEqualTo(Reason.INFEASIBLE);
        isAbout(plan, PlanQuantity.TARGET_DEPTH, 30);
        // Footprint 24 needs a path of 38.4 mm, the needle leaves 35: lifting the probe's edge does not help, 19 mm
        // needs 35.5.
        assertThat(plan.judgement().binding())
                .containsExactly(Limit.of(Limit.Kind.FOOTPRINT), Limit.of(Limit.Kind.REACH));
        WayOut longer = plan.waysOut().get(0);
        assertThat(longer.kind()).isEqualTo(WayOut.Kind.LONGER_NEEDLE);
        assertThat(value(longer.readings(), PlanQuantity.ANGLE_TO_SKIN)).isCloseTo(45, within(1e-9));
        assertThat(value(longer.readings(), PlanQuantity.SHORTEST_NEEDLE)).isCloseTo(52.426, within(HALF_LAST_DIGIT));
        assertThat(plan.waysOut()).noneMatch(way -> way.kind() == WayOut.Kind.FROM_PROBES_OTHER_END);
        assertThat(plan.text())
                .startsWith(
                        "No entry fits the limits you set, for what you marked: the probe stands where the needle would"
                                + " enter; the needle does not reach with its reserve.");
    }

    /** The entry stated at 8 degrees would need a needle of 225 mm; one of at most 150 mm reaches in the band. */
    @Test
    void aLongerNeedleIsOneThatThereIs() {
        fixture.needleLength = OptionalDouble.of(50);
        fixture.intent(new Intent.AngleToSkin(8));
        WayOut longer = plan().waysOut().get(0);
        assertThat(longer.kind()).isEqualTo(WayOut.Kind.LONGER_NEEDLE);
        assertThat(value(longer.readings(), PlanQuantity.ANGLE_TO_SKIN)).isCloseTo(45, within(1e-9));
        fixture.intent(new Intent.AngleToSkin(20));
        longer = plan().waysOut().get(0);
        assertThat(value(longer.readings(), PlanQuantity.ANGLE_TO_SKIN)).isCloseTo(20, within(1e-6));
        // The deepest target that 150 mm reach at 90 degrees lies at 140 mm, clear of the probe less.
        fixture.mmPerRow = 0.1;
        fixture.targetW = 145;
        fixture.intent(new Intent.AngleToSkin(45));
        assertThat(plan().waysOut()).extracting(WayOut::kind).doesNotContain(WayOut.Kind.LONGER_NEEDLE);
    }

    /** A target so near to the skin that clear of the probe only paths below 15 degrees lead to it. */
    @Test
    void aLongerNeedleIsNotOfferedForAVeryFlatPath() {
        fixture.targetW = 5;
        fixture.needleLength = OptionalDouble.of(30);
        InPlanePlan plan = plan();
        assertThat(plan.feasible()).isFalse();
        assertThat(plan.waysOut()).extracting(WayOut::kind).doesNotContain(WayOut.Kind.LONGER_NEEDLE);
    }

    @Test
    void liftingTheProbesEdgeIsAWayOut() {
        fixture.targetW = 28;
        fixture.needleLength = OptionalDouble.of(46);
        InPlanePlan plan = plan();
        assertThat(plan.feasible()).isFalse();
        WayOut lifted = plan.waysOut().stream()
                .filter(way -> way.kind() == WayOut.Kind.ENTRY_AT_PROBE_EDGE)
                .findFirst()
                .orElseThrow();
        double entry = value(lifted.readings(), PlanQuantity.ENTRY_DISTANCE);
        assertThat(entry).isBetween(19.0, 24.0);
        assertThat(Math.hypot(entry, 28)).isLessThanOrEqualTo(36 + 1e-9);
    }

    @Test
    void theProbesOtherEndIsAWayOut() {
        fixture.targetU = -15;
        fixture.needleLength = OptionalDouble.of(50);
        InPlanePlan plan = plan();
        assertThat(plan.feasible()).isFalse();
        WayOut other = plan.waysOut().stream()
                .filter(way -> way.kind() == WayOut.Kind.FROM_PROBES_OTHER_END)
                .findFirst()
                .orElseThrow();
        double entry = value(other.readings(), PlanQuantity.ENTRY_DISTANCE);
        assertThat(Math.hypot(entry - 15, 30)).isLessThanOrEqualTo(40 + 1e-9);
    }

    @Test
    void aStatedPathThatBreaksALimitIsComputedAndNamed() {
        fixture.intent(new Intent.EntryDistance(20));
        fixture.needleLength = OptionalDouble.of(40);
        InPlanePlan plan = plan();
        assertThat(plan.feasible()).isFalse();
        isAbout(plan, PlanQuantity.PATH, Math.hypot(20, 30));
        assertThat(plan.judgement().binding())
                .containsExactly(Limit.of(Limit.Kind.FOOTPRINT), Limit.of(Limit.Kind.REACH));
        assertThat(plan.judgement().notes()).contains(PlanNote.STEEPER_THAN_BAND);
        isAbout(plan, PlanQuantity.HEEL_IN, Math.toDegrees(Math.atan2(30, 20)) - 45);
    }

    @Test
    void aStatedEntryUnderTheProbeHasAShallowerWayOut() {
        fixture.intent(new Intent.EntryDistance(20));
        WayOut way = plan().waysOut().stream()
                .filter(w -> w.kind() == WayOut.Kind.SHALLOWER)
                .findFirst()
                .orElseThrow();
        assertThat(value(way.readings(), PlanQuantity.ENTRY_DISTANCE)).isCloseTo(24, within(1e-9));
    }

    @Test
    void aStatedEntryTooFarHasASteeperWayOut() {
        fixture.targetW = 20;
        fixture.intent(new Intent.EntryDistance(40));
        fixture.needleLength = OptionalDouble.of(50);
        WayOut way = plan().waysOut().stream()
                .filter(w -> w.kind() == WayOut.Kind.STEEPER_WITH_HEEL_IN)
                .findFirst()
                .orElseThrow();
        assertThat(value(way.readings(), PlanQuantity.PATH)).isCloseTo(40, within(1e-9));
        assertThat(value(way.readings(), PlanQuantity.HEEL_IN)).isZero();
    }

    @Test
    void heelInBeyondTheMostIsInfeasible() {
        fixture.intent(new Intent.AngleToSkin(61));
        assertThat(reason(plan().readings(), PlanQuantity.HEEL_IN)).isEqualTo(Reason.INFEASIBLE);
        fixture.intent(new Intent.AngleToSkin(60));
        isAbout(plan(), PlanQuantity.HEEL_IN, 15);
    }

    @Test
    void leadInLimitMovesTheEntryNearer() {
        fixture.constraints = new ConstraintsFixture().leadInMax(20).build();
        InPlanePlan plan = plan();
        isAbout(plan, PlanQuantity.LEAD_IN, 20);
        assertThat(plan.feasible()).isTrue();
        fixture.intent(new Intent.AngleToSkin(30));
        assertThat(plan().judgement().binding()).containsExactly(Limit.of(Limit.Kind.LEAD_IN));
    }

    @Test
    void aTargetBesideTheFaceIsNeverShown() {
        fixture.targetU = 25;
        fixture.intent(new Intent.AngleToSkin(45));
        InPlanePlan plan = plan();
        isAbout(plan, PlanQuantity.LEAD_IN, 42.426);
        assertThat(reason(plan.readings(), PlanQuantity.FIRST_SEEN_DEPTH)).isEqualTo(Reason.NO_SHAFT_UNDER_FACE);
        assertThat(reason(plan.readings(), PlanQuantity.SPECULAR_RETURN)).isEqualTo(Reason.NO_SHAFT_UNDER_FACE);
    }

    @Test
    void theHousingReachesFartherThanTheFace() {
        fixture.housingLength = OptionalDouble.of(50);
        fixture.intent(new Intent.EntryDistance(29));
        InPlanePlan plan = plan();
        isAbout(plan, PlanQuantity.ENTRY_FROM_PROBE_EDGE, 4);
        assertThat(plan.judgement().binding()).containsExactly(Limit.of(Limit.Kind.FOOTPRINT));
        assertThat(plan.choices().feasibleEntries().get(0).low()).isEqualTo(30);
    }

    @Test
    void theTableHasEveryAngleAndSaysWhyNot() {
        fixture.needleLength = OptionalDouble.of(60);
        List<PlanRow> rows = plan().choices().alternatives();
        assertThat(rows).hasSize(9);
        assertThat(value(rows.get(0).readings(), PlanQuantity.ANGLE_TO_SKIN)).isCloseTo(20, within(1e-12));
        assertThat(rows.get(0).why()).containsExactly(Limit.of(Limit.Kind.REACH));
        assertThat(rows.get(0).feasible()).isFalse();
        assertThat(rows.get(5).feasible()).isTrue();
        assertThat(rows.get(8).why()).containsExactly(Limit.of(Limit.Kind.FOOTPRINT));
    }

    @Test
    void aBandOfOneAngleIsKept() {
        fixture.constraints = new ConstraintsFixture().band(new Band(35, 35)).build();
        isAbout(plan(), PlanQuantity.ANGLE_TO_SKIN, 35);
        assertThat(plan().inBand()).isTrue();
    }
}
