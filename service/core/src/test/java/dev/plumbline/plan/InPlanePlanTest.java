// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import dev.plumbline.CaseFixture;
import dev.plumbline.geometry.Assumption;
import dev.plumbline.geometry.Doubt;
import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.geometry.PixelSize;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Probe;
import dev.plumbline.geometry.Reading;
import dev.plumbline.geometry.Readings;
import dev.plumbline.geometry.Reason;
import dev.plumbline.geometry.Region;
import dev.plumbline.geometry.Side;
import dev.plumbline.geometry.UltrasoundRegion;
import dev.plumbline.problem.Refusal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class InPlanePlanTest {
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

    /** GEOMETRY worked values: plain trigonometry, any calculator confirms. */
    @Test
    void depth30Entry45() {
        fixture.intent(new Intent.EntryDistance(45));
        InPlanePlan plan = plan();
        isAbout(plan, PlanQuantity.ANGLE_TO_SKIN, 33.690);
        isAbout(plan, PlanQuantity.PATH, 54.083);
        isAbout(plan, PlanQuantity.LEAD_IN, 31.248);
        isAbout(plan, PlanQuantity.FIRST_SEEN_DEPTH, 17.333);
        isAbout(plan, PlanQuantity.ENTRY_FROM_PROBE_EDGE, 26);
        isAbout(plan, PlanQuantity.ENTRY_DISTANCE, 45);
        isAbout(plan, PlanQuantity.ENTRY_FROM_TARGET_COLUMN, 45);
        isAbout(plan, PlanQuantity.SHORTEST_NEEDLE, 64.083);
        isAbout(plan, PlanQuantity.BEAM_INCIDENCE, 56.310);
        isAbout(plan, PlanQuantity.TARGET_DEPTH, 30);
        isAbout(plan, PlanQuantity.SIDEWAYS_TOLERANCE, 0.5);
        isAbout(plan, PlanQuantity.HEEL_IN, 0);
        assertThat(plan.source()).isEqualTo(Plan.Source.STATED);
        assertThat(plan.inBand()).isTrue();
        assertThat(plan.feasible()).isTrue();
        InPlanePlan.Line line = plan.line().orElseThrow();
        assertThat(line.entry().distanceTo(fixture.at(45, 0))).isLessThan(1e-9);
        assertThat(line.firstSeen().orElseThrow().distanceTo(fixture.at(19, 17 + 1.0 / 3)))
                .isLessThan(1e-9);
    }

    /** GEOMETRY worked values. */
    @Test
    void depth30Angle30And45() {
        fixture.intent(new Intent.AngleToSkin(30));
        InPlanePlan flat = plan();
        isAbout(flat, PlanQuantity.ENTRY_DISTANCE, 51.962);
        isAbout(flat, PlanQuantity.PATH, 60);
        isAbout(flat, PlanQuantity.LEAD_IN, 38.061);
        isAbout(flat, PlanQuantity.FIRST_SEEN_DEPTH, 19.030);
        fixture.intent(new Intent.AngleToSkin(45));
        InPlanePlan steep = plan();
        isAbout(steep, PlanQuantity.ENTRY_DISTANCE, 30);
        isAbout(steep, PlanQuantity.PATH, 42.426);
        isAbout(steep, PlanQuantity.LEAD_IN, 15.556);
        isAbout(steep, PlanQuantity.FIRST_SEEN_DEPTH, 11);
    }

    /** GEOMETRY worked values: linear probe 38 wide, depth 10, mid-probe, clearance 5. */
    @Test
    void shallowTargetIsReachedShallowerThanTheBand() {
        fixture.targetW = 10;
        InPlanePlan plan = plan();
        assertThat(plan.feasible()).isTrue();
        assertThat(plan.source()).isEqualTo(Plan.Source.PROPOSED);
        isAbout(plan, PlanQuantity.ENTRY_DISTANCE, 24);
        isAbout(plan, PlanQuantity.ANGLE_TO_SKIN, 22.620);
        assertThat(plan.judgement().notes()).contains(PlanNote.SHALLOWER_THAN_BAND);
        assertThat(plan.inBand()).isFalse();
    }

    /** GEOMETRY worked values: specular return at depth 30, h 19. */
    @Test
    void specularReturnFallsWithTheAngle() {
        double[][] rows = {{20, 0.751}, {30, 0.133}, {35, 0}, {45, 0}, {60, 0}};
        for (double[] row : rows) {
            fixture.intent(new Intent.AngleToSkin(row[0]));
            isAbout(plan(), PlanQuantity.SPECULAR_RETURN, row[1]);
        }
    }

    /** GEOMETRY worked values: b 1, path 50, 45 degrees. */
    @Test
    void rotationToleranceComesFromTheBeamThickness() {
        fixture.targetW = 50 / Math.sqrt(2);
        fixture.intent(new Intent.AngleToSkin(45));
        isAbout(plan(), PlanQuantity.ROTATION_TOLERANCE, 0.810);
    }

    /** GEOMETRY worked values: b 1, path 50: shaft to plane 0.573 degrees. */
    @Test
    void theShaftMayLeaveThePlaneByHalfTheBeamOverThePath() {
        fixture.targetW = 30;
        fixture.intent(new Intent.EntryDistance(40));
        assertThat(value(plan().readings(), PlanQuantity.SHAFT_TO_PLANE)).isCloseTo(0.573, within(HALF_LAST_DIGIT));
        fixture.beamThickness = OptionalDouble.of(100);
        assertThat(plan().readings().of(PlanQuantity.SHAFT_TO_PLANE)).isEqualTo(new Reading.NotSeen(Reason.INFEASIBLE));
    }

    /**
     * FACTS 1.2, recomputed: a needle stays corner to corner inside a slice of w mm along L mm up to asin(w / L) of yaw; from
     * the mid-plane, as here, up to asin(w / 2L), so that a beam of 2 w gives the same figures.
     */
    @ParameterizedTest
    @CsvSource({
        "1, 20, 2.866",
        "1, 40, 1.433",
        "1, 60, 0.955",
        "2, 20, 5.739",
        "2, 40, 2.866",
        "4, 20, 11.537",
        "4, 60, 3.823"
    })
    void theSliceBoundsTheYaw(double slice, double length, double degrees) {
        fixture.beamThickness = OptionalDouble.of(2 * slice);
        fixture.targetW = 12;
        fixture.targetU = 8;
        fixture.intent(new Intent.EntryDistance(8 + Math.sqrt(length * length - 144)));
        assertThat(value(plan().readings(), PlanQuantity.SHAFT_TO_PLANE)).isCloseTo(degrees, within(HALF_LAST_DIGIT));
    }

    @Test
    void anUprightPathHasNoRotationTolerance() {
        fixture.intent(new Intent.AngleToSkin(90));
        InPlanePlan plan = plan();
        assertThat(reason(plan.readings(), PlanQuantity.ROTATION_TOLERANCE)).isEqualTo(Reason.VERTICAL_PATH);
        isAbout(plan, PlanQuantity.PATH, 30);
        isAbout(plan, PlanQuantity.ENTRY_DISTANCE, 0);
    }

    @Test
    void theFieldOfViewEndsWhereTheImageEnds() {
        // The frame shows 10 mm beside the midpoint, the face is wider.
        fixture.columns = 1200;
        fixture.intent(new Intent.EntryDistance(45));
        InPlanePlan plan = plan();
        isAbout(plan, PlanQuantity.LEAD_IN, 35 / Math.cos(Math.atan2(30, 45)));
    }

    @Test
    void withoutMidpointTheAngleIsKnownAndTheEntryIsNot() {
        fixture.midpoint = false;
        fixture.intent(new Intent.AngleToSkin(30));
        InPlanePlan plan = plan();
        isAbout(plan, PlanQuantity.ANGLE_TO_SKIN, 30);
        isAbout(plan, PlanQuantity.PATH, 60);
        isAbout(plan, PlanQuantity.ENTRY_FROM_TARGET_COLUMN, 51.962);
        for (PlanQuantity quantity : List.of(
                PlanQuantity.ENTRY_DISTANCE,
                PlanQuantity.ENTRY_FROM_PROBE_EDGE,
                PlanQuantity.LEAD_IN,
                PlanQuantity.FIRST_SEEN_DEPTH,
                PlanQuantity.SPECULAR_RETURN)) {
            assertThat(reason(plan.readings(), quantity)).isEqualTo(Reason.MIDPOINT_NOT_MARKED);
        }
        assertThat(plan.judgement().unchecked()).contains(Limit.of(Limit.Kind.FOOTPRINT));
        assertThat(plan.choices().feasibleEntries()).isEmpty();
        assertThat(plan.line().orElseThrow().entry().distanceTo(fixture.at(51.96152422706632, 0)))
                .isLessThan(1e-9);
    }

    @Test
    void nothingIsInventedForAProbeThatWasNotDescribed() {
        fixture.footprint = OptionalDouble.empty();
        InPlanePlan plan = plan();
        assertThat(reason(plan.readings(), PlanQuantity.LEAD_IN)).isEqualTo(Reason.NOT_MARKED);
        assertThat(reason(plan.readings(), PlanQuantity.ENTRY_FROM_PROBE_EDGE)).isEqualTo(Reason.NOT_MARKED);
        assertThat(plan.judgement().unchecked())
                .containsExactly(Limit.of(Limit.Kind.FOOTPRINT), Limit.of(Limit.Kind.REACH));
        fixture.footprint = OptionalDouble.of(38);
        fixture.kind = Optional.empty();
        InPlanePlan kindUnknown = plan();
        assertThat(reason(kindUnknown.readings(), PlanQuantity.BEAM_INCIDENCE)).isEqualTo(Reason.NOT_MARKED);
        assertThat(reason(kindUnknown.readings(), PlanQuantity.LEAD_IN)).isEqualTo(Reason.NOT_MARKED);
    }

    @Test
    void aLinearArraysSkinIsTheRegionsTopEdgeAndDoubted() {
        fixture.skin = false;
        fixture.intent(new Intent.AngleToSkin(45));
        InPlanePlan plan = plan();
        isAbout(plan, PlanQuantity.TARGET_DEPTH, 35);
        assertThat(plan.judgement().doubts()).containsExactly(Doubt.SKIN_ASSUMED, Doubt.MIDPOINT_OFF_SKIN);
        fixture.kind = Optional.empty();
        InPlanePlan unknown = plan();
        assertThat(reason(unknown.readings(), PlanQuantity.TARGET_DEPTH)).isEqualTo(Reason.SKIN_NOT_MARKED);
        isAbout(unknown, PlanQuantity.ANGLE_TO_SKIN, 45);
        assertThat(unknown.feasible()).isFalse();
    }

    @Test
    void anEntryMarkIsSnappedToTheSkinAndThenExact() {
        fixture.intent(new Intent.EntryMark(fixture.at(45, 3)));
        InPlanePlan plan = plan();
        isAbout(plan, PlanQuantity.ENTRY_DISTANCE, 45);
        assertThat(((Reading.Seen) plan.readings().of(PlanQuantity.ENTRY_DISTANCE)).standardUncertainty())
                .isZero();
    }

    @Test
    void saysItInWords() {
        fixture.intent(new Intent.EntryDistance(45));
        fixture.needleLength = OptionalDouble.of(80);
        assertThat(plan().text())
                .startsWith(
                        "Enter 26 mm beyond the probe's edge (45 mm from its middle), about 35\u00b0 (3 along, 2 down)."
                                + " It should appear 17 mm deep once 31 mm are in; if 31 mm are in and nothing shows, stop and find"
                                + " it. 54 mm of needle to the target: an 80 mm needle leaves 26 mm outside.");
    }

    @Test
    void listsWhatItTakesForGranted() {
        assertThat(plan().judgement().assumptions())
                .containsExactly(
                        Assumption.NEEDLE_IN_IMAGE_PLANE,
                        Assumption.NEEDLE_STRAIGHT,
                        Assumption.SKIN_FLAT_BEYOND_PROBE);
        assertThat(plan().judgement().notes()).containsExactly(PlanNote.NO_HAZARDS_MARKED, PlanNote.NO_NERVE_MARKED);
    }

    @Test
    void theNeedleMayComeFromTheLeft() {
        fixture.side = Optional.of(Side.LEFT);
        fixture.intent(new Intent.EntryDistance(45));
        InPlanePlan plan = plan();
        isAbout(plan, PlanQuantity.ANGLE_TO_SKIN, 33.690);
        assertThat(plan.line().orElseThrow().entry().column()).isCloseTo(100, within(1e-9));
    }

    @Test
    void aStatedScaleIsEnough() {
        fixture.withRegion = false;
        fixture.intent(new Intent.EntryDistance(45));
        isAbout(plan(), PlanQuantity.ANGLE_TO_SKIN, 33.690);
        assertThat(fixture.frame().statedScale()).contains(new PixelSize(0.05, 0.05));
    }

    @Test
    void whatWasNotStatedLeavesItsNumbersOutWithTheReason() {
        fixture.footprint = OptionalDouble.empty();
        InPlanePlan plan = plan();
        assertThat(reason(plan.readings(), PlanQuantity.NEEDLE_LEFT)).isEqualTo(Reason.NOT_MARKED);
        assertThat(reason(plan.readings(), PlanQuantity.SPECULAR_RETURN)).isEqualTo(Reason.NOT_MARKED);
        fixture.skin = false;
        fixture.kind = Optional.empty();
        fixture.intent(new Intent.EntryDistance(45));
        InPlanePlan withoutSkin = plan();
        isAbout(withoutSkin, PlanQuantity.ENTRY_DISTANCE, 45);
        assertThat(reason(withoutSkin.readings(), PlanQuantity.ANGLE_TO_SKIN)).isEqualTo(Reason.SKIN_NOT_MARKED);
        assertThat(withoutSkin.source()).isEqualTo(Plan.Source.STATED);
    }

    /** The planned frame with a region that does not show all of it; the image probe-down where told. */
    private InPlanePlan inRegion(Region bounds, boolean inverted) {
        PlanInput input = fixture.input();
        UltrasoundRegion whole = input.frame().regions().get(0);
        UltrasoundRegion region = new UltrasoundRegion(
                bounds,
                1,
                1,
                OptionalInt.empty(),
                3,
                3,
                whole.deltaX(),
                whole.deltaY(),
                OptionalInt.empty(),
                OptionalInt.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty());
        Probe stated = input.probe();
        Probe probe = new Probe(
                stated.kind(),
                stated.footprintMm(),
                inverted ? Optional.of(new PointPx(1000, 1900)) : stated.midpoint(),
                stated.needleSide(),
                OptionalDouble.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.of(inverted));
        PlanMarks marks = inverted
                ? new PlanMarks(
                        new PointPx(1000, 1300),
                        Optional.empty(),
                        List.of(new PointPx(0, 1900), new PointPx(2000, 1900)),
                        List.of(),
                        List.of())
                : input.marks();
        FrameGeometry frame =
                new FrameGeometry(2000, 2000, List.of(region), Optional.empty(), Optional.empty(), "array-1");
        return (InPlanePlan) Plan.of(new PlanInput(
                input.approach(),
                frame,
                probe,
                marks,
                input.needle(),
                input.intent(),
                input.constraints(),
                input.uncertainty()));
    }

    /** From 15 mm beside the middle under the face to 30 mm depth; the image ends somewhere on the way. */
    @Test
    void theNeedleShowsFromWhereTheImageBegins() {
        double path = Math.hypot(15, 30);
        fixture.intent(new Intent.EntryDistance(15));
        InPlanePlan top = inRegion(new Region(0, 0, 150, 1999, 1999), false);
        isAbout(top, PlanQuantity.FIRST_SEEN_DEPTH, 2.5);
        isAbout(top, PlanQuantity.LEAD_IN, path * 2.5 / 30);
        InPlanePlan right = inRegion(new Region(0, 0, 0, 1199, 1999), false);
        isAbout(right, PlanQuantity.FIRST_SEEN_DEPTH, 10);
        isAbout(right, PlanQuantity.LEAD_IN, path / 3);
        InPlanePlan bottom = inRegion(new Region(0, 0, 0, 1999, 1839), true);
        isAbout(bottom, PlanQuantity.TARGET_DEPTH, 30);
        isAbout(bottom, PlanQuantity.FIRST_SEEN_DEPTH, 3);
        isAbout(bottom, PlanQuantity.LEAD_IN, path / 10);
        fixture.side = Optional.of(Side.LEFT);
        InPlanePlan left = inRegion(new Region(0, 800, 0, 1999, 1999), false);
        isAbout(left, PlanQuantity.FIRST_SEEN_DEPTH, 10);
        isAbout(left, PlanQuantity.LEAD_IN, path / 3);
        isAbout(inRegion(new Region(0, 0, 0, 1999, 1999), false), PlanQuantity.LEAD_IN, 0);
    }

    @Test
    void withoutRegionsTheImageEndsWithTheFrame() {
        fixture.withRegion = false;
        fixture.columns = 1200;
        fixture.intent(new Intent.EntryDistance(15));
        isAbout(plan(), PlanQuantity.LEAD_IN, Math.hypot(15, 30) / 3);
        isAbout(plan(), PlanQuantity.FIRST_SEEN_DEPTH, 10);
    }

    /** GEOMETRY: at 45 degrees and steeper no mirror reflection comes back, upright none either; beside the face none is asked. */
    @Test
    void anUprightShaftReturnsNothingUnderTheFace() {
        fixture.intent(new Intent.AngleToSkin(90));
        isAbout(plan(), PlanQuantity.SPECULAR_RETURN, 0);
        for (double beside : new double[] {25, -25}) {
            fixture.targetU = beside;
            assertThat(reason(plan().readings(), PlanQuantity.SPECULAR_RETURN)).isEqualTo(Reason.NO_SHAFT_UNDER_FACE);
        }
    }

    @Test
    void anEntryBeyondTheTargetIsToldWhereToStart() {
        fixture.targetU = 7.2;
        fixture.intent(new Intent.EntryDistance(6));
        Refusal refusal = catchThrowableOfType(Refusal.class, this::plan);
        assertThat(refusal.problem().remedy()).startsWith("Enter at least 8 mm from the midpoint");
        fixture.intent(new Intent.EntryDistance(7.2));
        isAbout(plan(), PlanQuantity.ANGLE_TO_SKIN, 90);
        fixture.midpoint = false;
        fixture.intent(new Intent.EntryMark(fixture.at(6, 0)));
        refusal = catchThrowableOfType(Refusal.class, this::plan);
        assertThat(refusal.problem().remedy()).startsWith("Enter at least 0 mm from the target");
    }

    @Test
    void everyNoteIsAWordAndASentence() {
        assertThat(PlanNote.NO_NERVE_MARKED.word()).isEqualTo("noNerveMarked");
        assertThat(PlanNote.NO_HAZARDS_MARKED.words()).isEqualTo("Hazards were not marked: nothing was checked.");
        for (PlanNote note : PlanNote.values()) {
            assertThat(note.words()).endsWith(".").contains(" ");
        }
    }
}
