// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.deviation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.plumbline.CaseFixture;
import dev.plumbline.geometry.InputUncertainty;
import dev.plumbline.geometry.Measurand;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Probe;
import dev.plumbline.geometry.Reading;
import dev.plumbline.geometry.Readings;
import dev.plumbline.geometry.Shape;
import dev.plumbline.geometry.Side;
import dev.plumbline.geometry.Unit;
import dev.plumbline.observation.ObservationInput;
import dev.plumbline.observation.ObservationMarks;
import dev.plumbline.plan.Constraints;
import dev.plumbline.plan.ConstraintsFixture;
import dev.plumbline.plan.Hazard;
import dev.plumbline.plan.InPlanePlan;
import dev.plumbline.plan.Intent;
import dev.plumbline.plan.Plan;
import dev.plumbline.plan.PlanInput;
import dev.plumbline.plan.PlanMarks;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;

/** What must not change when the same case is drawn mirrored, turned or at another size. */
class SymmetryPropertyTest {
    private static final double CLOSE = 1e-7;

    private static CaseFixture fixture(double depth, double entry) {
        CaseFixture fixture = new CaseFixture();
        fixture.targetW = depth;
        fixture.targetU = 2;
        fixture.needleLength = OptionalDouble.of(90);
        fixture.intent(new Intent.EntryDistance(entry));
        return fixture;
    }

    private static ObservationInput observed(CaseFixture fixture) {
        return fixture.observed(
                List.of(fixture.at(17, 8), fixture.at(9, 17)), Optional.of(fixture.at(1, fixture.targetW - 1)), true);
    }

    private static <M extends Enum<M> & Measurand> void equal(Readings<M> one, Readings<M> other, double lengths) {
        assertThat(other.measurands()).isEqualTo(one.measurands());
        for (M measurand : one.measurands()) {
            if (one.of(measurand) instanceof Reading.Seen expected) {
                Reading.Seen actual = (Reading.Seen) other.of(measurand);
                double factor = measurand.unit() == Unit.MILLIMETRE ? lengths : 1;
                assertThat(actual.value()).as(measurand.field()).isCloseTo(factor * expected.value(), within(CLOSE));
                assertThat(actual.standardUncertainty())
                        .as("u of %s", measurand.field())
                        .isCloseTo(factor * expected.standardUncertainty(), within(CLOSE));
            } else {
                assertThat(other.of(measurand)).isEqualTo(one.of(measurand));
            }
        }
    }

    private static void equal(Comparison one, Comparison other, double lengths) {
        equal(one.plan().readings(), other.plan().readings(), lengths);
        equal(one.observations().get(0).readings(), other.observations().get(0).readings(), lengths);
        equal(one.deviations().get(0).readings(), other.deviations().get(0).readings(), lengths);
    }

    @Property(tries = 100)
    void mirrored(
            @ForAll @DoubleRange(min = 20, max = 45) double depth,
            @ForAll @DoubleRange(min = 24, max = 45) double entry) {
        CaseFixture right = fixture(depth, entry);
        CaseFixture left = fixture(depth, entry);
        left.side = Optional.of(Side.LEFT);
        equal(
                Comparison.of(right.input(), List.of(observed(right))),
                Comparison.of(left.input(), List.of(observed(left))),
                1);
    }

    /** Every length twice as long on pixels twice as large: angles stay, lengths double. */
    @Property(tries = 100)
    void scaled(
            @ForAll @DoubleRange(min = 20, max = 45) double depth,
            @ForAll @DoubleRange(min = 24, max = 45) double entry,
            @ForAll @DoubleRange(min = 0.5, max = 3) double factor) {
        CaseFixture one = fixture(depth, entry);
        one.needleLength = OptionalDouble.empty();
        CaseFixture other = fixture(depth * factor, entry * factor);
        other.needleLength = OptionalDouble.empty();
        other.targetU = 2 * factor;
        other.mmPerColumn = 0.05 * factor;
        other.mmPerRow = 0.05 * factor;
        other.footprint = OptionalDouble.of(38 * factor);
        other.beamThickness = OptionalDouble.of(factor);
        other.constraints = scaled(factor);
        ObservationInput seen = observed(one);
        equal(
                Comparison.of(one.input(), List.of(seen)),
                Comparison.of(other.input(), List.of(new ObservationInput(seen.marks(), other.frame(), true))),
                factor);
    }

    private static Constraints scaled(double factor) {
        return new ConstraintsFixture()
                .reserve(10 * factor)
                .footprintClearance(5 * factor)
                .overshoot(5 * factor)
                .caution(5 * factor)
                .build();
    }

    /** All marks turned about the midpoint by a few degrees, on square pixels and wide enough a picture. */
    @Property(tries = 100)
    void turned(
            @ForAll @DoubleRange(min = 20, max = 40) double depth,
            @ForAll @DoubleRange(min = -20, max = 20) double degrees) {
        CaseFixture fixture = fixture(depth, 30);
        fixture.withRegion = false;
        fixture.footprint = OptionalDouble.empty();
        double cos = Math.cos(Math.toRadians(degrees));
        double sin = Math.sin(Math.toRadians(degrees));
        UnaryOperator<PointPx> move = p -> new PointPx(
                1000 + 0.5 * (cos * (p.column() - 1000) - sin * (p.row() - 100)),
                700 + 0.5 * (sin * (p.column() - 1000) + cos * (p.row() - 100)));
        fixture.mmPerColumn = 0.05;
        PlanInput level =
                moved(fixture.input(), p -> new PointPx(1000 + 0.5 * (p.column() - 1000), 700 + 0.5 * (p.row() - 100)));
        PlanInput turned = moved(fixture.input(), move);
        ObservationInput seen = observed(fixture);
        equal(
                Comparison.of(
                        level,
                        List.of(moved(
                                seen,
                                p -> new PointPx(1000 + 0.5 * (p.column() - 1000), 700 + 0.5 * (p.row() - 100))))),
                Comparison.of(turned, List.of(moved(seen, move))),
                1);
    }

    private static PlanInput moved(PlanInput input, UnaryOperator<PointPx> move) {
        Probe probe = input.probe();
        Probe at = new Probe(
                probe.kind(),
                probe.footprintMm(),
                probe.midpoint().map(move),
                probe.needleSide(),
                probe.beamThicknessMm(),
                probe.skinBeyondProbe(),
                probe.housingLengthMm(),
                probe.housingHalfThicknessMm(),
                probe.imageInverted());
        PlanMarks marks = new PlanMarks(
                move.apply(input.marks().target()),
                input.marks().targetKind(),
                input.marks().skin().stream().map(move).toList(),
                List.of(),
                List.of());
        return new PlanInput(
                input.approach(),
                input.frame(),
                at,
                marks,
                input.needle(),
                input.intent(),
                input.constraints(),
                // Scale errors of the two axes do not turn with the marks unless they are left out.
                new InputUncertainty(OptionalDouble.empty(), OptionalDouble.of(0), Optional.empty()));
    }

    private static ObservationInput moved(ObservationInput input, UnaryOperator<PointPx> move) {
        ObservationMarks marks = input.marks();
        return new ObservationInput(
                new ObservationMarks(
                        marks.id(),
                        marks.phase(),
                        marks.shaft().stream().map(move).toList(),
                        marks.tip().map(move),
                        marks.tipIsTip(),
                        Optional.empty(),
                        Optional.empty(),
                        List.of(),
                        OptionalDouble.empty()),
                input.frame(),
                true);
    }

    @Property(tries = 100)
    void tighteningALimitShrinksWhatIsFeasible(
            @ForAll @DoubleRange(min = 10, max = 45) double depth,
            @ForAll @DoubleRange(min = 30, max = 100) double needle,
            @ForAll @DoubleRange(min = 0, max = 20) double less,
            @ForAll @DoubleRange(min = 5, max = 40) double leadIn,
            @ForAll @DoubleRange(min = 0, max = 3) double margin) {
        CaseFixture loose = new CaseFixture();
        loose.targetW = depth;
        loose.needleLength = OptionalDouble.of(needle);
        loose.constraints = new ConstraintsFixture().leadInMax(leadIn + 5).build();
        CaseFixture tight = new CaseFixture();
        tight.targetW = depth;
        for (CaseFixture fixture : List.of(loose, tight)) {
            double asked = fixture == tight ? margin : margin / 2;
            fixture.hazards.add(new Hazard(
                    "vessel",
                    Hazard.Kind.ARTERY,
                    OptionalDouble.of(asked),
                    new Shape.Disc(fixture.at(14, depth * 0.5), 2)));
        }
        tight.needleLength = OptionalDouble.of(needle - less);
        tight.constraints =
                new ConstraintsFixture().leadInMax(leadIn).footprintClearance(6).build();
        List<InPlanePlan.Interval> wide =
                ((InPlanePlan) Plan.of(loose.input())).choices().feasibleEntries();
        for (InPlanePlan.Interval part :
                ((InPlanePlan) Plan.of(tight.input())).choices().feasibleEntries()) {
            assertThat(wide).anyMatch(w -> w.low() <= part.low() + CLOSE && part.high() <= w.high() + CLOSE);
        }
    }

    @Property(tries = 200)
    void anExactObservationOfAnyPlanDiffersByNothing(
            @ForAll @DoubleRange(min = 10, max = 45) double depth,
            @ForAll @DoubleRange(min = 10, max = 80) double degrees,
            @ForAll @DoubleRange(min = 0.2, max = 0.7) double seen) {
        CaseFixture fixture = new CaseFixture();
        fixture.targetW = depth;
        fixture.targetU = -3;
        fixture.intent(new Intent.AngleToSkin(degrees));
        double run = depth / Math.tan(Math.toRadians(degrees));
        // Only the part of the path that lies on the picture can be marked.
        double from = Math.min(seen, 21 / run);
        Comparison comparison = Comparison.of(
                fixture.input(),
                List.of(fixture.observed(
                        List.of(
                                fixture.at(-3 + from * run, depth - from * depth),
                                fixture.at(-3 + from * run / 3, depth - from * depth / 3)),
                        Optional.of(fixture.at(-3, depth)),
                        true)));
        Readings<DeviationQuantity> deviation = comparison.deviations().get(0).readings();
        for (DeviationQuantity quantity : deviation.measurands()) {
            Reading.Seen difference = (Reading.Seen) deviation.of(quantity);
            assertThat(difference.value()).as(quantity.field()).isCloseTo(0, within(1e-6));
            assertThat(difference.exceedsUncertainty()).isFalse();
        }
    }
}
