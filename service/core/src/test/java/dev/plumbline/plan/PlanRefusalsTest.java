// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import dev.plumbline.CaseFixture;
import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.geometry.InputUncertainty;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Probe;
import dev.plumbline.geometry.Region;
import dev.plumbline.geometry.Side;
import dev.plumbline.geometry.SkinBeyondProbe;
import dev.plumbline.geometry.UltrasoundRegion;
import dev.plumbline.needle.Needle;
import dev.plumbline.plan.Constraints.Band;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

class PlanRefusalsTest {
    private final CaseFixture fixture = new CaseFixture();

    private Problem problem() {
        return problem(fixture.input());
    }

    private static Problem problem(PlanInput input) {
        Refusal refusal = catchThrowableOfType(Refusal.class, () -> Plan.of(input));
        assertThat(refusal).as("refused").isNotNull();
        return refusal.problem();
    }

    private PlanInput withSkin(PointPx... skin) {
        PlanInput input = fixture.input();
        PlanMarks marks = new PlanMarks(input.marks().target(), Optional.empty(), List.of(skin), List.of(), List.of());
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

    private void refusesAt(String pointer) {
        Problem problem = problem();
        assertThat(problem.pointer()).isEqualTo(pointer);
        assertThat(problem.remedy()).isNotBlank();
    }

    @Test
    void refusesATargetOnOrAboveTheSkin() {
        fixture.targetW = 0;
        assertThat(problem()).isInstanceOf(Problem.TargetUnreachable.class);
        fixture.targetW = -2;
        refusesAt("/marks/target");
    }

    @Test
    void refusesMarksOutsideTheFrame() {
        fixture.targetW = 96;
        assertThat(problem()).isEqualTo(new Problem.MarkOutsideFrame("/marks/target", 2000, 2000));
        fixture.targetW = 30;
        assertThat(problem(withSkin(new PointPx(-1, 100), new PointPx(2000, 100)))
                        .pointer())
                .isEqualTo("/marks/skin/0");
        fixture.intent(new Intent.EntryMark(new PointPx(2001, 100)));
        refusesAt("/intent/entry");
    }

    @Test
    void refusesSkinMarksThatFixNoLine() {
        assertThat(problem(withSkin(new PointPx(10, 100))).pointer()).isEqualTo("/marks/skin");
        assertThat(problem(withSkin(new PointPx(10, 100), new PointPx(11.9, 100))))
                .isEqualTo(new Problem.MarksCoincide("/marks/skin"));
        assertThat(problem(withSkin(new PointPx(10, 100), new PointPx(500, 400), new PointPx(1000, 100)))
                        .detail())
                .contains("no line");
        assertThat(problem(withSkin(new PointPx(500, 100), new PointPx(510, 900)))
                        .detail())
                .contains("up and down");
    }

    @Test
    void acceptsSkinMarksTwoPixelsApart() {
        assertThat(Plan.of(withSkin(new PointPx(999, 100), new PointPx(1001, 100)))
                        .feasible())
                .isTrue();
    }

    @Test
    void refusesAMissingNeedleSideWithTheRemedy() {
        fixture.side = Optional.empty();
        Problem problem = problem();
        assertThat(problem).isInstanceOf(Problem.MissingField.class);
        assertThat(problem.pointer()).isEqualTo("/probe/needleSide");
        assertThat(problem.remedy()).contains("left or right", "shaft");
    }

    /** The frame is 100 mm wide. */
    @Test
    void refusesAFaceLongerThanTheFrame() {
        fixture.footprint = OptionalDouble.of(111);
        refusesAt("/probe/footprintMm");
        assertThat(problem().detail()).contains("100 mm");
        fixture.footprint = OptionalDouble.of(109);
        assertThat(Plan.of(fixture.input()).feasible()).isTrue();
    }

    @Test
    void refusesABandThatIsNone() {
        for (Band band : List.of(new Band(0, 45), new Band(45, 30), new Band(30, 90), new Band(Double.NaN, 45))) {
            fixture.constraints = new ConstraintsFixture().band(band).build();
            refusesAt("/constraints/angleBandDeg");
        }
    }

    @Test
    void refusesLengthsThatAreNone() {
        for (double length : new double[] {0, -1, Double.NaN, Double.POSITIVE_INFINITY}) {
            fixture.footprint = OptionalDouble.of(length);
            refusesAt("/probe/footprintMm");
        }
        fixture.footprint = OptionalDouble.of(38);
        fixture.needleLength = OptionalDouble.of(0);
        refusesAt("/needle/lengthMm");
        fixture.needleLength = OptionalDouble.empty();
        fixture.housingLength = OptionalDouble.of(20);
        refusesAt("/probe/housingLengthMm");
        fixture.housingLength = OptionalDouble.empty();
        fixture.beamThickness = OptionalDouble.of(-1);
        refusesAt("/probe/beamThicknessMm");
        fixture.beamThickness = OptionalDouble.empty();
        fixture.constraints = new ConstraintsFixture().reserve(-1).build();
        refusesAt("/constraints/reserveMm");
        fixture.constraints = new ConstraintsFixture()
                .footprintClearance(Double.POSITIVE_INFINITY)
                .build();
        refusesAt("/constraints/footprintClearanceMm");
        fixture.constraints = new ConstraintsFixture().leadInMax(0).build();
        refusesAt("/constraints/leadInMaxMm");
        fixture.constraints = new ConstraintsFixture().outOfPlaneAngle(90).build();
        refusesAt("/constraints/outOfPlaneAngleDeg");
    }

    @Test
    void refusesEveryLengthOfTheProbeThatIsNone() {
        fixture.housingLength = OptionalDouble.of(0);
        refusesAt("/probe/housingLengthMm");
        fixture.housingLength = OptionalDouble.empty();
        fixture.housingHalfThickness = OptionalDouble.of(-8);
        refusesAt("/probe/housingHalfThicknessMm");
        fixture.housingHalfThickness = OptionalDouble.empty();
        fixture.footprint = OptionalDouble.empty();
        fixture.housingLength = OptionalDouble.of(0);
        refusesAt("/probe/housingLengthMm");
        fixture.housingLength = OptionalDouble.empty();
        fixture.arcRadius = OptionalDouble.of(0);
        refusesAt("/probe/arcRadiusMm");
    }

    @Test
    void aHousingMayBeAsLongAsItsFaceAndNoShorter() {
        fixture.housingLength = OptionalDouble.of(38);
        assertThat(Plan.of(fixture.input()).feasible()).isTrue();
        fixture.housingLength = OptionalDouble.of(37.9);
        refusesAt("/probe/housingLengthMm");
    }

    /** A face of 38 mm chord on a radius of 19 mm would be a half circle. */
    @Test
    void anArcIsWiderThanHalfItsChord() {
        fixture.kind = Optional.of(Probe.Kind.CURVED);
        fixture.arcRadius = OptionalDouble.of(19);
        refusesAt("/probe/arcRadiusMm");
        fixture.arcRadius = OptionalDouble.of(60);
        assertThat(Plan.of(fixture.input()).feasible()).isTrue();
    }

    @Test
    void refusesEveryConstraintThatIsNone() {
        fixture.constraints = new ConstraintsFixture().caution(-1).build();
        refusesAt("/constraints/cautionWithinMm");
        fixture.constraints = new ConstraintsFixture().overshoot(-0.1).build();
        refusesAt("/constraints/overshootMm");
        for (double degrees : new double[] {-1, 90.5}) {
            fixture.constraints = new ConstraintsFixture().heelInMax(degrees).build();
            refusesAt("/constraints/heelInMaxDeg");
        }
        fixture.constraints = new ConstraintsFixture().maxPuncture(0).build();
        refusesAt("/constraints/maxPunctureDistanceMm");
        fixture.constraints = new ConstraintsFixture().steepPuncture(-15).build();
        refusesAt("/constraints/steepPunctureDistanceMm");
    }

    @Test
    void acceptsConstraintsOnTheirBounds() {
        fixture.constraints = new ConstraintsFixture()
                .caution(0)
                .overshoot(0)
                .reserve(0)
                .footprintClearance(0)
                .heelInMax(90)
                .build();
        assertThat(Plan.of(fixture.input()).feasible()).isTrue();
        fixture.constraints = new ConstraintsFixture().heelInMax(0).build();
        assertThat(Plan.of(fixture.input()).feasible()).isTrue();
    }

    @Test
    void refusesAMidpointOffTheFrame() {
        PlanInput input = fixture.input();
        Probe probe = new Probe(
                input.probe().kind(),
                input.probe().footprintMm(),
                Optional.of(new PointPx(2000.5, 100)),
                input.probe().needleSide(),
                OptionalDouble.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty());
        PlanInput off = new PlanInput(
                input.approach(),
                input.frame(),
                probe,
                input.marks(),
                input.needle(),
                input.intent(),
                input.constraints(),
                input.uncertainty());
        assertThat(problem(off).pointer()).isEqualTo("/probe/midpoint");
    }

    @Test
    void aDropStartsBeyondTheFaceAndALimbIsThickerThanIt() {
        fixture.skinBeyond = Optional.of(new SkinBeyondProbe.Round(19));
        refusesAt("/probe/skinBeyondProbe/radiusMm");
        for (double radius : new double[] {0, Double.NaN, Double.POSITIVE_INFINITY}) {
            fixture.skinBeyond = Optional.of(new SkinBeyondProbe.Round(radius));
            refusesAt("/probe/skinBeyondProbe/radiusMm");
        }
        for (double at : new double[] {19, Double.NaN, Double.POSITIVE_INFINITY}) {
            fixture.skinBeyond = Optional.of(new SkinBeyondProbe.Drop(5, at));
            refusesAt("/probe/skinBeyondProbe/atMm");
        }
        for (double drop : new double[] {-1, Double.NaN}) {
            fixture.skinBeyond = Optional.of(new SkinBeyondProbe.Drop(drop, 40));
            refusesAt("/probe/skinBeyondProbe/dropMm");
        }
        fixture.footprint = OptionalDouble.empty();
        fixture.skinBeyond = Optional.of(new SkinBeyondProbe.Drop(5, 40));
        refusesAt("/probe/footprintMm");
        fixture.footprint = OptionalDouble.of(38);
        fixture.midpoint = false;
        refusesAt("/probe/midpoint");
        fixture.approach = Approach.OUT_OF_PLANE;
        refusesAt("/probe/skinBeyondProbe");
    }

    @Test
    void refusesUncertaintiesThatAreNone() {
        fixture.uncertainty = new InputUncertainty(OptionalDouble.of(0), OptionalDouble.empty(), Optional.empty());
        refusesAt("/uncertainty/markPx");
        fixture.uncertainty = new InputUncertainty(OptionalDouble.empty(), OptionalDouble.of(-0.1), Optional.empty());
        refusesAt("/uncertainty/scaleRelative");
        fixture.uncertainty = new InputUncertainty(
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.of(new InputUncertainty.ScannerTolerance(-1, 2)));
        refusesAt("/uncertainty/scannerTolerance/mm");
        fixture.uncertainty = new InputUncertainty(
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.of(new InputUncertainty.ScannerTolerance(1, 100.5)));
        refusesAt("/uncertainty/scannerTolerance/percent");
    }

    @Test
    void refusesAnIntentOfTheOtherApproach() {
        fixture.intent(new Intent.PunctureDistance(20));
        refusesAt("/intent/punctureDistanceMm");
        assertThat(problem().remedy()).startsWith("In-plane: state entryDistanceMm");
        fixture.approach = Approach.OUT_OF_PLANE;
        fixture.intent(new Intent.EntryDistance(20));
        refusesAt("/intent/entryDistanceMm");
        assertThat(problem().remedy()).isEqualTo("Out-of-plane: state punctureDistanceMm.");
        fixture.intent(new Intent.AngleToSkin(20));
        refusesAt("/intent/angleToSkinDeg");
        fixture.intent(new Intent.PunctureDistance(0));
        refusesAt("/intent/punctureDistanceMm");
    }

    @Test
    void refusesAnAngleThatIsNone() {
        for (double degrees : new double[] {0, 90.5, -3, Double.NaN}) {
            fixture.intent(new Intent.AngleToSkin(degrees));
            refusesAt("/intent/angleToSkinDeg");
        }
    }

    @Test
    void refusesAnEntryBeyondTheTarget() {
        fixture.intent(new Intent.EntryDistance(-1));
        refusesAt("/intent/entryDistanceMm");
        fixture.intent(new Intent.EntryDistance(Double.NaN));
        refusesAt("/intent/entryDistanceMm");
        fixture.intent(new Intent.EntryDistance(Double.POSITIVE_INFINITY));
        refusesAt("/intent/entryDistanceMm");
        assertThat(problem().detail()).contains("not a number that is finite");
        fixture.side = Optional.of(Side.LEFT);
        fixture.intent(new Intent.EntryMark(new PointPx(1400, 100)));
        refusesAt("/intent/entry");
    }

    @Test
    void refusesAnEntryDistanceWithoutTheMidpointItIsMeasuredFrom() {
        fixture.midpoint = false;
        fixture.intent(new Intent.EntryDistance(40));
        refusesAt("/probe/midpoint");
    }

    @Test
    void refusesAFrameItCannotMeasureIn() {
        PlanInput input = fixture.input();
        Region elsewhere = new Region(0, 0, 0, 100, 100);
        PlanInput outside = new PlanInput(
                input.approach(),
                new FrameGeometry(
                        2000,
                        2000,
                        List.of(new UltrasoundRegion(
                                elsewhere,
                                1,
                                1,
                                OptionalInt.empty(),
                                3,
                                3,
                                0.01,
                                0.01,
                                OptionalInt.empty(),
                                OptionalInt.empty(),
                                OptionalDouble.empty(),
                                OptionalDouble.empty())),
                        Optional.empty(),
                        Optional.empty(),
                        "array-1"),
                input.probe(),
                input.marks(),
                Needle.NOTHING_STATED,
                input.intent(),
                input.constraints(),
                input.uncertainty());
        assertThat(problem(outside).pointer()).isEqualTo("/marks/target");
    }
}
