// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import dev.plumbline.CaseFixture;
import dev.plumbline.deviation.Comparison;
import dev.plumbline.deviation.DeviationQuantity;
import dev.plumbline.geometry.Assumption;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Probe;
import dev.plumbline.geometry.Reading;
import dev.plumbline.geometry.Reason;
import dev.plumbline.geometry.SkinBeyondProbe;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Skin that is not flat beyond the probe, and curved arrays. */
class SkinAndArrayTest {
    private final CaseFixture fixture = new CaseFixture();

    private InPlanePlan plan() {
        return (InPlanePlan) Plan.of(fixture.input());
    }

    private double value(InPlanePlan plan, PlanQuantity quantity) {
        return ((Reading.Seen) plan.readings().of(quantity)).value();
    }

    private void refusesAt(String pointer) {
        Refusal refusal = catchThrowableOfType(Refusal.class, () -> Plan.of(fixture.input()));
        assertThat(refusal).as(pointer).isNotNull();
        assertThat(refusal.problem().pointer()).isEqualTo(pointer);
    }

    /** GEOMETRY worked values: round limb r 60, depth 30, entry 45 and 30: skin 20.314 and 8.038 lower. */
    @Test
    void onARoundLimbTheAngleIsFlatter() {
        fixture.skinBeyond = Optional.of(new SkinBeyondProbe.Round(60));
        fixture.intent(new Intent.EntryDistance(45));
        InPlanePlan far = plan();
        assertThat(value(far, PlanQuantity.ANGLE_TO_SKIN)).isCloseTo(12.148, within(0.0005));
        assertThat(value(far, PlanQuantity.PATH)).isCloseTo(Math.hypot(45, 30 - 20.314), within(0.001));
        // The limb's skin falls away by asin(45/60) there.
        assertThat(value(far, PlanQuantity.ANGLE_TO_LOCAL_SKIN))
                .isCloseTo(12.148 + Math.toDegrees(Math.asin(0.75)), within(0.0005));
        assertThat(far.line().orElseThrow().entry().distanceTo(fixture.at(45, 20.314)))
                .isLessThan(0.02);
        fixture.intent(new Intent.EntryDistance(30));
        assertThat(value(plan(), PlanQuantity.ANGLE_TO_SKIN)).isCloseTo(36.206, within(0.0005));
        assertThat(plan().judgement().assumptions()).doesNotContain(Assumption.SKIN_FLAT_BEYOND_PROBE);
    }

    @Test
    void aStatedAngleMeetsTheRoundSkin() {
        fixture.skinBeyond = Optional.of(new SkinBeyondProbe.Round(60));
        fixture.intent(new Intent.AngleToSkin(36.206));
        assertThat(value(plan(), PlanQuantity.ENTRY_DISTANCE)).isCloseTo(30, within(0.001));
    }

    @Test
    void theDropStartsAtTheEdge() {
        fixture.skinBeyond = Optional.of(new SkinBeyondProbe.Drop(10, 39));
        fixture.intent(new Intent.EntryDistance(29));
        InPlanePlan plan = plan();
        assertThat(value(plan, PlanQuantity.ANGLE_TO_SKIN)).isCloseTo(Math.toDegrees(Math.atan2(25, 29)), within(1e-9));
        assertThat(value(plan, PlanQuantity.ANGLE_TO_LOCAL_SKIN))
                .isCloseTo(Math.toDegrees(Math.atan2(25, 29)) + Math.toDegrees(Math.atan2(10, 20)), within(1e-9));
        double angle = value(plan, PlanQuantity.ANGLE_TO_SKIN);
        fixture.intent(new Intent.AngleToSkin(angle));
        assertThat(value(plan(), PlanQuantity.ENTRY_DISTANCE)).isCloseTo(29, within(1e-9));
    }

    @Test
    void anExactObservationOnARoundLimbDiffersByNothing() {
        fixture.skinBeyond = Optional.of(new SkinBeyondProbe.Round(60));
        fixture.intent(new Intent.EntryDistance(45));
        double w = 60 - Math.sqrt(3600 - 45 * 45);
        Comparison comparison = Comparison.of(
                fixture.input(),
                List.of(fixture.observed(
                        List.of(fixture.at(45 * 0.6, 30 + 0.6 * (w - 30)), fixture.at(45 * 0.2, 30 + 0.2 * (w - 30))),
                        Optional.of(fixture.at(0, 30)),
                        true)));
        for (DeviationQuantity quantity :
                comparison.deviations().get(0).readings().measurands()) {
            Reading.Seen seen =
                    (Reading.Seen) comparison.deviations().get(0).readings().of(quantity);
            assertThat(seen.value()).as(quantity.field()).isCloseTo(0, within(1e-8));
        }
        assertThat(comparison.observations().get(0).entry().orElseThrow().distanceTo(fixture.at(45, w)))
                .isLessThan(1e-6);
    }

    @Test
    void theTableNamesAnglesThatMeetNoSkin() {
        fixture.skinBeyond = Optional.of(new SkinBeyondProbe.Round(25));
        fixture.footprint = OptionalDouble.of(20);
        fixture.targetW = 40;
        List<PlanRow> rows = plan().choices().alternatives();
        assertThat(rows.get(0).feasible()).isFalse();
        assertThat(((Reading.Seen) rows.get(0).readings().of(PlanQuantity.ANGLE_TO_SKIN)).value())
                .isCloseTo(20, within(1e-9));
        assertThat(rows.get(0).readings().of(PlanQuantity.ENTRY_DISTANCE))
                .isEqualTo(new Reading.NotSeen(Reason.INFEASIBLE));
        fixture.intent(new Intent.AngleToSkin(20));
        refusesAt("/intent/angleToSkinDeg");
        fixture.intent(new Intent.EntryDistance(26));
        refusesAt("/intent/entryDistanceMm");
    }

    @Test
    void refusesSkinThatCannotBe() {
        fixture.skinBeyond = Optional.of(new SkinBeyondProbe.Round(19));
        refusesAt("/probe/skinBeyondProbe/radiusMm");
        fixture.skinBeyond = Optional.of(new SkinBeyondProbe.Drop(5, 19));
        refusesAt("/probe/skinBeyondProbe/atMm");
        fixture.skinBeyond = Optional.of(new SkinBeyondProbe.Drop(-1, 30));
        refusesAt("/probe/skinBeyondProbe/dropMm");
        fixture.footprint = OptionalDouble.empty();
        refusesAt("/probe/footprintMm");
        fixture.midpoint = false;
        refusesAt("/probe/midpoint");
        fixture.midpoint = true;
        fixture.footprint = OptionalDouble.of(38);
        fixture.skinBeyond = Optional.of(new SkinBeyondProbe.Round(60));
        fixture.approach = Approach.OUT_OF_PLANE;
        refusesAt("/probe/skinBeyondProbe");
    }

    @Test
    void refusesATargetOutsideTheLimb() {
        fixture.skinBeyond = Optional.of(new SkinBeyondProbe.Round(25));
        fixture.targetU = 24;
        fixture.targetW = 10;
        Refusal refusal = catchThrowableOfType(Refusal.class, () -> Plan.of(fixture.input()));
        assertThat(refusal.problem()).isInstanceOf(Problem.TargetUnreachable.class);
    }

    @Test
    void aCurvedArraysSkinComesFromMarksOnly() {
        fixture.kind = Optional.of(Probe.Kind.CURVED);
        fixture.skin = false;
        assertThat(plan().readings().of(PlanQuantity.ANGLE_TO_SKIN))
                .isEqualTo(new Reading.NotSeen(Reason.SKIN_NOT_MARKED));
    }

    @Test
    void aCurvedArrayShowsASector() {
        fixture.kind = Optional.of(Probe.Kind.CURVED);
        fixture.footprint = OptionalDouble.of(60);
        fixture.arcRadius = OptionalDouble.of(50);
        fixture.intent(new Intent.EntryDistance(45));
        InPlanePlan plan = plan();
        // The sector's side leaves the arc's center (0, -50) with sine 30 / 50 and is met where 40 u = 30 (w + 50).
        double share = (40.0 * 45 - 30 * 50) / (40.0 * 45 + 30 * 30);
        assertThat(value(plan, PlanQuantity.LEAD_IN)).isCloseTo(share * Math.hypot(45, 30), within(1e-9));
        assertThat(value(plan, PlanQuantity.FIRST_SEEN_DEPTH)).isCloseTo(share * 30, within(1e-9));
        // Under the midpoint the beam runs straight down.
        assertThat(value(plan, PlanQuantity.BEAM_INCIDENCE)).isCloseTo(90 - 33.690, within(0.0005));
        assertThat(plan.readings().of(PlanQuantity.SPECULAR_RETURN)).isEqualTo(new Reading.NotSeen(Reason.NOT_MARKED));
        fixture.targetU = -20;
        double beam = Math.atan2(20, 80);
        double shaft = Math.atan2(30, 65);
        assertThat(value(plan(), PlanQuantity.BEAM_INCIDENCE))
                .isCloseTo(90 - Math.toDegrees(shaft) - Math.toDegrees(beam), within(1e-9));
    }

    @Test
    void withoutItsRadiusACurvedArraysFieldIsUnknown() {
        fixture.kind = Optional.of(Probe.Kind.CURVED);
        fixture.intent(new Intent.EntryDistance(45));
        for (PlanQuantity quantity : List.of(PlanQuantity.LEAD_IN, PlanQuantity.BEAM_INCIDENCE)) {
            assertThat(plan().readings().of(quantity)).isEqualTo(new Reading.NotSeen(Reason.NOT_MARKED));
        }
        fixture.arcRadius = OptionalDouble.of(19);
        refusesAt("/probe/arcRadiusMm");
    }

    @Test
    void setsTheMachineForTheTarget() {
        SetUp deep = SetUp.of(plan());
        assertThat(((Reading.Seen) deep.imagingDepthMm()).value()).isCloseTo(60, within(1e-9));
        assertThat(((Reading.Seen) deep.focusDepthMm()).value()).isCloseTo(30, within(1e-9));
        fixture.targetW = 6;
        SetUp shallow = SetUp.of(plan());
        assertThat(((Reading.Seen) shallow.imagingDepthMm()).value()).isCloseTo(16, within(1e-9));
        fixture.kind = Optional.empty();
        fixture.skin = false;
        assertThat(SetUp.of(plan()).imagingDepthMm()).isEqualTo(new Reading.NotSeen(Reason.SKIN_NOT_MARKED));
    }

    /** Face of 60 mm chord on a radius of 50 mm: its middle lies 10 mm below the skin line through its ends. */
    private PlanInput bulging(double targetDepth) {
        fixture.mmPerColumn = 0.1;
        fixture.mmPerRow = 0.1;
        fixture.kind = Optional.of(Probe.Kind.CURVED);
        fixture.footprint = OptionalDouble.of(60);
        fixture.arcRadius = OptionalDouble.of(50);
        fixture.targetW = targetDepth - 10;
        PlanInput input = fixture.input();
        PlanMarks marks = new PlanMarks(
                input.marks().target(),
                input.marks().targetKind(),
                List.of(new PointPx(0, 0), new PointPx(2000, 0)),
                List.of(),
                List.of());
        return new PlanInput(
                input.approach(),
                input.frame(),
                input.probe(),
                marks,
                input.needle(),
                input.intent(),
                input.constraints(),
                input.uncertainty());
    }

    /** The tangent from 15 mm depth to the arc about (0, -40) makes asin(50 / 55) with the vertical. */
    @Test
    void aBulgingFaceStandsInTheWayOfSteepPaths() {
        fixture.constraints = new ConstraintsFixture().footprintClearance(0).build();
        InPlanePlan plan = (InPlanePlan) Plan.of(bulging(15));
        assertThat(plan.choices().feasibleEntries().get(0).low())
                .isCloseTo(15 * 50 / Math.sqrt(55 * 55 - 50 * 50), within(1e-9)); // 32.733
        fixture.intent(new Intent.EntryDistance(32.5));
        assertThat(Plan.of(bulging(15)).judgement().binding()).containsExactly(Limit.of(Limit.Kind.FOOTPRINT));
        fixture.intent(new Intent.EntryDistance(33));
        assertThat(Plan.of(bulging(15)).feasible()).isTrue();
        fixture.constraints = Constraints.NOTHING_STATED;
        assertThat(Plan.of(bulging(15)).judgement().binding()).containsExactly(Limit.of(Limit.Kind.FOOTPRINT));
        fixture.intent(new Intent.EntryDistance(35));
        assertThat(Plan.of(bulging(15)).feasible()).isTrue();
    }

    @Test
    void refusesATargetAboveTheBulgingFace() {
        PlanInput input = bulging(9);
        Refusal refusal = catchThrowableOfType(Refusal.class, () -> Plan.of(input));
        assertThat(refusal.problem().detail()).isEqualTo("The target lies above the probe's curved face.");
        assertThat(((Reading.Seen) Plan.of(bulging(11)).readings().of(PlanQuantity.TARGET_DEPTH)).value())
                .isCloseTo(11, within(1e-9));
    }

    @Test
    void withoutAPathTheAngleToTheLimbsSkinHasItsReasonToo() {
        fixture.skinBeyond = Optional.of(new SkinBeyondProbe.Round(60));
        fixture.needleLength = OptionalDouble.of(35);
        InPlanePlan plan = plan();
        assertThat(plan.feasible()).isFalse();
        assertThat(plan.readings().of(PlanQuantity.ANGLE_TO_LOCAL_SKIN))
                .isEqualTo(new Reading.NotSeen(Reason.INFEASIBLE));
        assertThat(value(plan, PlanQuantity.SIDEWAYS_TOLERANCE)).isEqualTo(0.5);
        assertThat(value(plan, PlanQuantity.TARGET_DEPTH)).isCloseTo(30, within(1e-9));
    }

    /** At 45 mm on a limb of radius 50 the skin falls by asin(45 / 50), so that the angle to it passes 90 degrees. */
    @Test
    void theAngleToTheSkinItselfIsNeverMoreThanARightAngle() {
        fixture.skinBeyond = Optional.of(new SkinBeyondProbe.Round(50));
        fixture.targetW = 70;
        fixture.intent(new Intent.EntryDistance(45));
        double skin = 50 - Math.sqrt(50 * 50 - 45 * 45);
        double sum = Math.toDegrees(Math.atan2(70 - skin, 45) + Math.asin(0.9));
        assertThat(value(plan(), PlanQuantity.ANGLE_TO_LOCAL_SKIN)).isCloseTo(180 - sum, within(1e-9));
    }
}
