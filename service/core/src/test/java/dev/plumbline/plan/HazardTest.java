// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import dev.plumbline.CaseFixture;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Reading;
import dev.plumbline.geometry.Reason;
import dev.plumbline.geometry.Shape;
import dev.plumbline.geometry.SkinBeyondProbe;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class HazardTest {
    private final CaseFixture fixture = new CaseFixture();

    private InPlanePlan plan() {
        return (InPlanePlan) Plan.of(fixture.input());
    }

    private void hazard(String name, double margin, Shape shape) {
        fixture.hazards.add(new Hazard(name, Hazard.Kind.ARTERY, OptionalDouble.of(margin), shape));
    }

    private Shape disc(double u, double w, double radius) {
        return new Shape.Disc(fixture.at(u, w), radius);
    }

    private Shape outline(double... coordinates) {
        List<PointPx> points = new ArrayList<>();
        for (int i = 0; i < coordinates.length; i += 2) {
            points.add(fixture.at(coordinates[i], coordinates[i + 1]));
        }
        return new Shape.Outline(points);
    }

    private static double value(Reading reading) {
        return ((Reading.Seen) reading).value();
    }

    private static double entry(InPlanePlan plan) {
        return value(plan.readings().of(PlanQuantity.ENTRY_DISTANCE));
    }

    /** Tangents from (0, 30) to the circle of radius 3 about (20, 15), by hand: 36.870 degrees -+ asin(3 / 25). */
    @Test
    void aDiscForbidsTheEntriesBetweenItsTangents() {
        hazard("artery", 0, disc(20, 15, 3));
        List<InPlanePlan.Interval> allowed = plan().choices().feasibleEntries();
        double middle = Math.atan2(15, 20);
        double half = Math.asin(3.0 / 25);
        assertThat(allowed).hasSize(2);
        assertThat(allowed.get(0).high()).isCloseTo(30 / Math.tan(middle + half), within(1e-9));
        assertThat(allowed.get(1).low()).isCloseTo(30 / Math.tan(middle - half), within(1e-9));
    }

    @Test
    void theExtensionBeyondTheTargetCounts() {
        hazard("pleura", 0, outline(-30, 33, 30, 33, 30, 60, -30, 60));
        InPlanePlan plan = plan();
        // 5 mm beyond the target no more than 3 mm deeper: at most asin(3 / 5) steep.
        double steepest = Math.asin(3.0 / 5);
        assertThat(plan.choices().feasibleEntries().get(0).low()).isCloseTo(30 / Math.tan(steepest), within(1e-9));
        fixture.constraints = new ConstraintsFixture().overshoot(0).build();
        assertThat(plan().choices().feasibleEntries().get(0).low()).isEqualTo(24);
    }

    @Test
    void aHazardAcrossTheSkinForbidsEnteringThroughIt() {
        hazard("vein", 0, outline(30, -2, 40, -2, 40, 1, 30, 1));
        List<InPlanePlan.Interval> allowed = plan().choices().feasibleEntries();
        assertThat(allowed.get(0).high()).isCloseTo(30, within(1e-9));
        // The flattest path that still crosses it passes its far lower corner (40, 1).
        assertThat(allowed.get(1).low()).isCloseTo(40 * 30.0 / 29, within(1e-9));
    }

    @Test
    void aHazardBehindTheEntryDoesNotMatter() {
        fixture.intent(new Intent.EntryDistance(30));
        hazard("vein", 0, disc(40, 2, 1.5));
        assertThat(plan().feasible()).isTrue();
        assertThat(value(plan().clearances().hazards().get(0).path())).isCloseTo(Math.hypot(10, 2) - 1.5, within(1e-9));
    }

    @Test
    void aHazardAboveTheSkinIsIgnoredAndListed() {
        hazard("gel", 0, disc(45, -3, 2));
        InPlanePlan plan = plan();
        assertThat(plan.clearances().hazards()).isEmpty();
        assertThat(plan.judgement().unchecked()).contains(new Limit(Limit.Kind.HAZARD, Optional.of("gel")));
        assertThat(plan.text()).contains("Above the skin and so ignored: \"gel\".");
    }

    @Test
    void aCrossedHazardHasANegativeClearanceAndIsNamed() {
        hazard("artery", 0, disc(20, 15, 3));
        fixture.intent(new Intent.EntryDistance(40));
        InPlanePlan plan = plan();
        assertThat(plan.feasible()).isFalse();
        assertThat(plan.judgement().binding()).containsExactly(new Limit(Limit.Kind.HAZARD, Optional.of("artery")));
        assertThat(value(plan.clearances().hazards().get(0).path())).isCloseTo(-3, within(1e-9));
        assertThat(plan.text()).contains("\"artery\": crossed, the overshoot counted in.");
        hazard("muscle", 0, outline(10, 14, 30, 14, 30, 17, 10, 17));
        Reading crossed = plan().clearances().hazards().get(1).path();
        // The corner (10, 17) is nearest to the line from (40, 0) to (0, 30) on the side with less to move.
        assertThat(value(crossed)).isNegative();
    }

    /** Without any entry the limits that leave none are named, and the reason stands in place of every number. */
    @Test
    void hazardsInEveryWayAreAnAnswer() {
        hazard("bone", 0, outline(-40, 20, 49, 20, 49, 22, -40, 22));
        fixture.needleLength = OptionalDouble.of(100);
        InPlanePlan plan = plan();
        assertThat(plan.feasible()).isFalse();
        // A longer needle would pass beside the bone, and without the bone this one is long enough.
        assertThat(plan.judgement().binding())
                .containsExactly(Limit.of(Limit.Kind.REACH), new Limit(Limit.Kind.HAZARD, Optional.of("bone")));
        assertThat(plan.clearances().hazards().get(0).path()).isEqualTo(new Reading.NotSeen(Reason.INFEASIBLE));
        assertThat(plan.waysOut()).extracting(WayOut::kind).contains(WayOut.Kind.OUT_OF_PLANE);
    }

    @Test
    void aMarginIsLimitedByWhatTheTargetHas() {
        hazard("artery", 4, disc(0, 34, 2));
        InPlanePlan plan = plan();
        // The target lies 2 mm above the artery: only a path that passes level keeps that much on both sides of the
        // target.
        assertThat(plan.clearances().hazards().get(0).marginLimitedByTarget()).isTrue();
        assertThat(plan.feasible()).isFalse();
        assertThat(plan.text())
                .startsWith(
                        "No entry fits the limits you set, for what you marked: the path comes too near to the hazard"
                                + " \"artery\". The target lies"
                                + " nearer to the hazard \"artery\" than the margin you set, so that with 5 mm of overshoot only a path along its side fits");
        fixture.constraints = new ConstraintsFixture().overshoot(0).build();
        InPlanePlan stopped = plan();
        assertThat(stopped.feasible()).isTrue();
        assertThat(value(stopped.clearances().hazards().get(0).path())).isCloseTo(2, within(1e-9));
        assertThat(stopped.text()).doesNotContain("The target lies nearer");
    }

    @Test
    void onlyTheTangentPassesAHazardThatLimitsTheMargin() {
        // Perpendicular to the 36.870 degree path, 3 mm from the target.
        hazard("artery", 5, disc(-0.6 * 5, 30 - 0.8 * 5, 2));
        InPlanePlan plan = plan();
        assertThat(plan.feasible()).isTrue();
        assertThat(plan.choices().feasibleEntries()).hasSize(1);
        assertThat(entry(plan)).isCloseTo(40, within(1e-4));
    }

    @Test
    void prefersEntriesThatKeepTheCautionDistance() {
        hazard("artery", 0, disc(26, 18, 2));
        InPlanePlan plan = plan();
        double flattest = 30 / Math.tan(Math.toRadians(30));
        assertThat(entry(plan)).isLessThan(flattest - 1);
        assertThat(value(plan.clearances().hazards().get(0).path())).isCloseTo(5, within(1e-6));
        fixture.constraints = new ConstraintsFixture().caution(0).build();
        assertThat(entry(plan())).isCloseTo(flattest, within(1e-9));
    }

    @Test
    void withoutACautiousEntryTakesTheOneFarthestFromEveryHazard() {
        // Two discs to both sides of the 36.870 degree path, 4 mm from it: nothing keeps 5 mm, the middle keeps most.
        hazard("above", 0, disc(20 - 0.6 * 5, 15 - 0.8 * 5, 1));
        hazard("below", 0, disc(20 + 0.6 * 5, 15 + 0.8 * 5, 1));
        fixture.constraints = new ConstraintsFixture().footprintClearance(15).build();
        fixture.needleLength = OptionalDouble.of(65);
        InPlanePlan plan = plan();
        assertThat(value(plan.clearances().hazards().get(0).path())).isCloseTo(4, within(1e-3));
        assertThat(value(plan.clearances().hazards().get(1).path())).isCloseTo(4, within(1e-3));
        assertThat(entry(plan)).isCloseTo(40, within(0.01));
    }

    @Test
    void aNerveIsNotCrossedButTheExtensionIsOnlyReported() {
        fixture.nerves.add(new Nerve("median", disc(-2.5, 32.5, 1.5)));
        fixture.intent(new Intent.EntryDistance(30));
        InPlanePlan plan = plan();
        assertThat(plan.feasible()).isTrue();
        assertThat(value(plan.clearances().nerves().get(0).overshoot())).isCloseTo(-1.5, within(1e-6));
        assertThat(value(plan.clearances().nerves().get(0).path())).isCloseTo(Math.hypot(2.5, 2.5) - 1.5, within(1e-9));
        fixture.nerves.clear();
        fixture.nerves.add(new Nerve("ulnar", disc(15, 15, 1)));
        assertThat(plan().judgement().binding()).containsExactly(new Limit(Limit.Kind.NERVE, Optional.of("ulnar")));
    }

    @Test
    void refusesATargetInsideAStructure() {
        fixture.nerves.add(new Nerve("median", outline(-2, 28, 2, 28, 2, 32, -2, 32)));
        Refusal refusal = catchThrowableOfType(Refusal.class, this::plan);
        assertThat(refusal.problem()).isInstanceOf(Problem.TargetUnreachable.class);
        assertThat(refusal.problem().remedy()).isEqualTo("Move it to where the tip should stop.");
        fixture.nerves.clear();
        fixture.approach = Approach.OUT_OF_PLANE;
        hazard("artery", 0, disc(1, 31, 3));
        assertThat(catchThrowableOfType(Refusal.class, () -> Plan.of(fixture.input()))
                        .problem()
                        .pointer())
                .isEqualTo("/marks/target");
    }

    @Test
    void outOfPlaneNothingBesideTheBeamWasChecked() {
        fixture.approach = Approach.OUT_OF_PLANE;
        hazard("artery", 0, disc(10, 20, 3));
        assertThat(Plan.of(fixture.input()).judgement().unchecked())
                .contains(new Limit(Limit.Kind.HAZARD, Optional.of("artery")));
    }

    @Test
    void refusesStructuresThatCannotBeToldApart() {
        hazard("artery", 0, disc(20, 15, 3));
        hazard("artery", 0, disc(30, 25, 3));
        Refusal twice = catchThrowableOfType(Refusal.class, this::plan);
        assertThat(twice.problem().pointer()).isEqualTo("/marks/hazards/1/name");
        fixture.hazards.clear();
        fixture.hazards.add(new Hazard("vein", Hazard.Kind.VEIN, OptionalDouble.of(-1), disc(20, 15, 3)));
        Refusal margin = catchThrowableOfType(Refusal.class, this::plan);
        assertThat(margin.problem().pointer()).isEqualTo("/marks/hazards/0/marginMm");
        fixture.hazards.clear();
        hazard("vein", 0, new Shape.Disc(new PointPx(-5, 100), 3));
        Refusal outside = catchThrowableOfType(Refusal.class, this::plan);
        assertThat(outside.problem().pointer()).isEqualTo("/marks/hazards/0/disc/center");
        fixture.hazards.clear();
        fixture.nerves.add(new Nerve(
                "n", new Shape.Outline(List.of(new PointPx(10, 200), new PointPx(50, 200), new PointPx(50, 2001)))));
        Refusal corner = catchThrowableOfType(Refusal.class, this::plan);
        assertThat(corner.problem().pointer()).isEqualTo("/marks/nerves/0/outline/2");
    }

    @Test
    void rowsCarryTheLeastClearance() {
        hazard("artery", 0, disc(20, 15, 3));
        hazard("vein", 0, disc(24, 18, 2));
        PlanRow row = plan().choices().flattest().orElseThrow();
        double least = value(row.readings().of(PlanQuantity.LEAST_CLEARANCE));
        assertThat(least).isGreaterThanOrEqualTo(-1e-9);
        assertThat(((Reading.Seen) row.readings().of(PlanQuantity.LEAST_CLEARANCE)).standardUncertainty())
                .isPositive();
    }

    /**
     * A disc below the target that the tangents of it are too long to matter for: the end of the 5 mm extension comes to
     * its rim at (-4, 33), on the 3-4-5 path from 40 mm.
     */
    @Test
    void theEndOfTheExtensionCountsAgainstADiscBelowTheTarget() {
        hazard("pleura", 0, disc(-4, 36, 3));
        assertThat(plan().choices().feasibleEntries().get(0).low()).isCloseTo(40, within(1e-9));
        fixture.hazards.clear();
        hazard("pleura", 2, disc(-4, 36, 1));
        assertThat(plan().choices().feasibleEntries().get(0).low()).isCloseTo(40, within(1e-9));
    }

    @Test
    void theMarginOfAnOutlineCountsFromItsEdges() {
        hazard("pleura", 2, outline(-30, 35, 30, 35, 30, 60, -30, 60));
        assertThat(plan().choices().feasibleEntries().get(0).low()).isCloseTo(40, within(1e-9));
        fixture.hazards.clear();
        hazard("vein", 1, outline(30, -2, 40, -2, 40, 1, 30, 1));
        assertThat(plan().choices().feasibleEntries().get(0).high()).isCloseTo(29, within(1e-9));
    }

    @Test
    void everyHazardHasItsOwnMargin() {
        hazard("nearby", 0, disc(-30, 70, 3));
        hazard("artery", 2, disc(20, 15, 3));
        double middle = Math.atan2(15, 20);
        assertThat(plan().choices().feasibleEntries().get(0).high())
                .isCloseTo(30 / Math.tan(middle + Math.asin(5.0 / 25)), within(1e-9));
    }

    @Test
    void aDiscThatReachesThroughTheSkinIsNotIgnored() {
        hazard("vein", 0, disc(45, -1, 2));
        assertThat(plan().clearances().hazards()).hasSize(1);
        fixture.hazards.clear();
        hazard("touching", 0, disc(45, -2, 2));
        assertThat(plan().clearances().hazards()).isEmpty();
    }

    /** Skin of a limb of radius 60: at 40 mm beside the middle it lies 15.3 mm lower. */
    @Test
    void anOutlineIsIgnoredWhereNoneOfItLiesInTheLimb() {
        fixture.skinBeyond = Optional.of(new SkinBeyondProbe.Round(60));
        hazard("through", 0, outline(-40, 5, 40, 5, 0, -4));
        hazard("over", 0, outline(-20, -1, 20, -1, 0, -4));
        hazard("beside", 0, outline(38, 5, 45, 5, 40, 2));
        hazard("corner", 0, outline(38, 5, 45, 5, 40, 20));
        InPlanePlan plan = plan();
        assertThat(plan.clearances().hazards()).extracting(Clearance::name).containsExactly("through", "corner");
        assertThat(plan.judgement().unchecked())
                .contains(
                        new Limit(Limit.Kind.HAZARD, Optional.of("over")),
                        new Limit(Limit.Kind.HAZARD, Optional.of("beside")));
    }

    @Test
    void aTargetInAnyStructureIsRefusedByItsName() {
        hazard("artery", 0, disc(1, 31, 3));
        refusesTheTarget("The target lies inside the hazard \"artery\".");
        fixture.hazards.clear();
        fixture.approach = Approach.OUT_OF_PLANE;
        fixture.nerves.add(new Nerve("median", outline(-2, 28, 2, 28, 2, 32, -2, 32)));
        refusesTheTarget("The target lies inside the nerve \"median\".");
        fixture.nerves.clear();
        fixture.targetW = -2;
        refusesTheTarget("The target lies on or above the skin line.");
        fixture.approach = Approach.IN_PLANE;
        refusesTheTarget("The target lies on or above the skin line.");
    }

    private void refusesTheTarget(String detail) {
        Refusal refusal = catchThrowableOfType(Refusal.class, () -> Plan.of(fixture.input()));
        assertThat(refusal).as(detail).isNotNull();
        assertThat(refusal.problem().pointer()).isEqualTo("/marks/target");
        assertThat(refusal.problem().detail()).isEqualTo(detail);
    }

    @Test
    void aNerveMayBearTheNameOfAHazardButNotOfAnotherNerve() {
        hazard("a", 0, disc(20, 5, 1));
        fixture.nerves.add(new Nerve("a", disc(-20, 40, 1)));
        assertThat(Plan.of(fixture.input()).text()).contains("Nerve \"a\"");
        fixture.nerves.add(new Nerve("a", disc(-20, 50, 1)));
        assertThat(catchThrowableOfType(Refusal.class, this::plan).problem().pointer())
                .isEqualTo("/marks/nerves/1/name");
    }

    @Test
    void withoutHazardsARowHasNoLeastClearance() {
        PlanRow row = plan().choices().flattest().orElseThrow();
        assertThat(row.readings().of(PlanQuantity.LEAST_CLEARANCE)).isEqualTo(new Reading.NotSeen(Reason.NOT_MARKED));
    }

    /** 4 mm deep from 49 mm: 4.7 degrees, flatter than any entry that would be proposed. */
    @Test
    void aVeryFlatStatedPathIsJudgedByEveryLimit() {
        fixture.targetW = 4;
        fixture.needleLength = OptionalDouble.of(80);
        fixture.intent(new Intent.EntryDistance(49));
        hazard("deep", 0, disc(-20, 60, 3));
        assertThat(plan().judgement().binding()).isEmpty();
        hazard("in the way", 0, disc(24.5, 2, 0.5));
        assertThat(plan().judgement().binding())
                .containsExactly(new Limit(Limit.Kind.HAZARD, Optional.of("in the way")));
        fixture.needleLength = OptionalDouble.of(59);
        assertThat(plan().judgement().binding())
                .containsExactly(Limit.of(Limit.Kind.REACH), new Limit(Limit.Kind.HAZARD, Optional.of("in the way")));
    }

    /** Needle, lead-in and footprint each leave nothing beside the others; the far hazard forbids no entry. */
    @Test
    void aLimitThatForbidsNothingDoesNotBind() {
        fixture.needleLength = OptionalDouble.of(30);
        fixture.constraints = new ConstraintsFixture().leadInMax(0.001).build();
        hazard("deep", 0, disc(-40, 80, 1));
        assertThat(plan().judgement().binding())
                .containsExactly(
                        Limit.of(Limit.Kind.FOOTPRINT), Limit.of(Limit.Kind.REACH), Limit.of(Limit.Kind.LEAD_IN));
    }

    /** Two discs to both sides of the 45 degree path, their rims 6 and 4 mm from it. */
    @Test
    void theLeastClearanceIsThatOfTheNearerHazardInAnyOrder() {
        Shape below = disc(15 + 9 / Math.sqrt(2), 15 + 9 / Math.sqrt(2), 3);
        Shape above = disc(15 - 7 / Math.sqrt(2), 15 - 7 / Math.sqrt(2), 3);
        for (List<Shape> order : List.of(List.of(below, above), List.of(above, below))) {
            fixture.hazards.clear();
            hazard("one", 0, order.get(0));
            hazard("other", 0, order.get(1));
            PlanRow row = plan().choices().alternatives().get(5);
            assertThat(value(row.readings().of(PlanQuantity.ANGLE_TO_SKIN))).isCloseTo(45, within(1e-9));
            assertThat(value(row.readings().of(PlanQuantity.LEAST_CLEARANCE))).isCloseTo(4, within(1e-9));
        }
    }

    @Test
    void withoutAPathNervesHaveTheirReasonToo() {
        fixture.needleLength = OptionalDouble.of(35);
        fixture.nerves.add(new Nerve("median", disc(-10, 40, 2)));
        InPlanePlan plan = plan();
        assertThat(plan.feasible()).isFalse();
        assertThat(plan.clearances().nerves())
                .containsExactly(new Clearance(
                        "median",
                        new Reading.NotSeen(Reason.INFEASIBLE),
                        new Reading.NotSeen(Reason.INFEASIBLE),
                        false));
    }
}
