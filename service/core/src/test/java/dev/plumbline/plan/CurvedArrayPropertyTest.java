// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import dev.plumbline.CaseFixture;
import dev.plumbline.geometry.Doubt;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Probe;
import dev.plumbline.geometry.Reading;
import dev.plumbline.problem.Refusal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;

/**
 * A curved array with its skin line through the ends of its face, so that the face bulges into the skin by its sagitta:
 * against plain sampling of path, sector and face.
 */
class CurvedArrayPropertyTest {
    private static final int STEPS = 20_000;

    /** A fixture whose skin line lies above the marked midpoint by the sagitta. */
    private static final class Curved {
        final CaseFixture fixture = new CaseFixture();
        final double half;
        final double radius;
        final double sagitta;
        final double targetU;
        final double targetW;

        Curved(double half, double radius, double targetU, double targetW) {
            this.half = half;
            this.radius = radius;
            this.targetU = targetU;
            this.targetW = targetW;
            sagitta = radius - Math.sqrt(radius * radius - half * half);
            fixture.mmPerColumn = 0.3;
            fixture.mmPerRow = 0.3;
            fixture.columns = 2000;
            fixture.rows = 1500;
            fixture.kind = Optional.of(Probe.Kind.CURVED);
            fixture.footprint = OptionalDouble.of(2 * half);
            fixture.arcRadius = OptionalDouble.of(radius);
        }

        PlanInput input() {
            // The fixture's own midpoint lies on its skin line; here the skin is marked the sagitta above it.
            fixture.targetU = targetU;
            fixture.targetW = targetW - sagitta;
            PlanInput input = fixture.input();
            PlanMarks marks = new PlanMarks(
                    input.marks().target(),
                    input.marks().targetKind(),
                    List.of(
                            new PointPx(0, CaseFixture.MID_ROW - sagitta / 0.3),
                            new PointPx(2000, CaseFixture.MID_ROW - sagitta / 0.3)),
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

        /** Whether a point (w below the skin line) is within the sector, in front of the face. */
        boolean shown(double u, double w) {
            double depth = w - sagitta + radius;
            return Math.atan2(Math.abs(u), depth) <= Math.asin(half / radius)
                    && Math.hypot(u, depth) >= radius - 1e-9
                    && Math.abs(u) <= 300;
        }
    }

    private static double value(InPlanePlan plan, PlanQuantity quantity) {
        return ((Reading.Seen) plan.readings().of(quantity)).value();
    }

    @Property(tries = 100)
    void firstSeenAndIncidenceAreThoseOfSampling(@ForAll long seed) {
        Random random = new Random(seed);
        double half = 20 + 12 * random.nextDouble();
        Curved curved = new Curved(half, half + 15 + 30 * random.nextDouble(), -10 + 20 * random.nextDouble(), 0);
        curved = new Curved(curved.half, curved.radius, curved.targetU, curved.sagitta + 15 + 50 * random.nextDouble());
        double entry = curved.half + 5 + 40 * random.nextDouble();
        curved.fixture.intent(new Intent.EntryDistance(entry));
        InPlanePlan plan = (InPlanePlan) Plan.of(curved.input());
        if (plan.judgement().binding().contains(Limit.of(Limit.Kind.FOOTPRINT))) {
            return;
        }
        double path = Math.hypot(entry - curved.targetU, curved.targetW);
        assertThat(value(plan, PlanQuantity.PATH)).isCloseTo(path, within(1e-9));
        double first = Double.NaN;
        for (int i = 0; i <= STEPS && Double.isNaN(first); i++) {
            double share = (double) i / STEPS;
            if (curved.shown(entry + share * (curved.targetU - entry), share * curved.targetW)) {
                first = share;
            }
        }
        if (Double.isNaN(first)) {
            assertThat(value(plan, PlanQuantity.LEAD_IN)).isCloseTo(path, within(path / STEPS));
        } else {
            assertThat(value(plan, PlanQuantity.LEAD_IN)).isCloseTo(first * path, within(2 * path / STEPS));
            assertThat(value(plan, PlanQuantity.FIRST_SEEN_DEPTH))
                    .isCloseTo(first * curved.targetW, within(2 * path / STEPS));
        }
        double beam = Math.atan2(curved.targetU, curved.targetW - curved.sagitta + curved.radius);
        double shaft = Math.atan2(curved.targetW, entry - curved.targetU);
        double between = Math.abs(Math.toDegrees(Math.PI / 2 - beam - (Math.PI - shaft)));
        assertThat(value(plan, PlanQuantity.BEAM_INCIDENCE)).isCloseTo(Math.min(between, 180 - between), within(1e-6));
    }

    @Property(tries = 100)
    void noPathRunsThroughTheFace(@ForAll long seed) {
        Random random = new Random(seed);
        double half = 20 + 12 * random.nextDouble();
        double radius = half + 2 + 20 * random.nextDouble();
        double sagitta = radius - Math.sqrt(radius * radius - half * half);
        Curved curved =
                new Curved(half, radius, -15 + 30 * random.nextDouble(), sagitta + 1 + 25 * random.nextDouble());
        curved.fixture.intent = Optional.empty();
        InPlanePlan plan = (InPlanePlan) Plan.of(curved.input());
        List<InPlanePlan.Interval> feasible = plan.choices().feasibleEntries();
        for (int i = 0; i < 40; i++) {
            double entry = half + 6 + 60 * random.nextDouble();
            double least = Double.POSITIVE_INFINITY;
            for (int step = 0; step <= 4000; step++) {
                double share = step / 4000.0;
                least = Math.min(
                        least,
                        Math.hypot(entry + share * (curved.targetU - entry), share * curved.targetW - sagitta + radius)
                                - radius);
            }
            double angle = Math.toDegrees(Math.atan2(curved.targetW, entry - curved.targetU));
            if (Math.abs(least) > 0.01 && angle > 5.1 && angle < 89.9) {
                assertThat(feasible.stream().anyMatch(p -> p.low() <= entry && entry <= p.high()))
                        .as("entry %s passes the face by %s", entry, least)
                        .isEqualTo(least > 0);
            }
        }
    }

    @Example
    void aTargetAboveTheFaceIsRefused() {
        Curved curved = new Curved(30, 40, 0, 10);
        Refusal refusal = catchThrowableOfType(Refusal.class, () -> Plan.of(curved.input()));
        assertThat(refusal.problem().pointer()).isEqualTo("/marks/target");
    }

    @Example
    void theMiddleOfACurvedFaceMayLieBelowTheSkinLineByItsSagitta() {
        Curved curved = new Curved(30, 50, 0, 50); // sagitta 10
        assertThat(doubts(curved)).doesNotContain(Doubt.MIDPOINT_OFF_SKIN);
        curved.fixture.arcRadius = OptionalDouble.empty();
        assertThat(doubts(curved)).doesNotContain(Doubt.MIDPOINT_OFF_SKIN);
        curved.fixture.kind = Optional.of(Probe.Kind.LINEAR);
        assertThat(doubts(curved)).contains(Doubt.MIDPOINT_OFF_SKIN);
        // An arc of 100 mm has a sagitta of 4.6 mm only.
        curved.fixture.kind = Optional.of(Probe.Kind.CURVED);
        curved.fixture.arcRadius = OptionalDouble.of(100);
        assertThat(doubts(curved)).contains(Doubt.MIDPOINT_OFF_SKIN);
        curved.fixture.footprint = OptionalDouble.empty();
        assertThat(doubts(curved)).doesNotContain(Doubt.MIDPOINT_OFF_SKIN);
        curved.fixture.footprint = OptionalDouble.of(12);
        curved.fixture.arcRadius = OptionalDouble.empty();
        assertThat(doubts(curved)).contains(Doubt.MIDPOINT_OFF_SKIN);
    }

    @Example
    void aMidpointOutsideTheSkinIsDoubtedOnAnyArray() {
        for (Probe.Kind kind : Probe.Kind.values()) {
            CaseFixture fixture = new CaseFixture();
            fixture.kind = Optional.of(kind);
            for (double above : new double[] {2.9, 3.1}) {
                PlanInput input = fixture.input();
                PlanMarks marks = new PlanMarks(
                        input.marks().target(),
                        Optional.empty(),
                        // From right to left: the order of the marks says nothing about where the tissue is.
                        List.of(
                                new PointPx(2000, CaseFixture.MID_ROW + above / 0.05),
                                new PointPx(0, CaseFixture.MID_ROW + above / 0.05)),
                        List.of(),
                        List.of());
                PlanInput off = new PlanInput(
                        input.approach(),
                        input.frame(),
                        input.probe(),
                        marks,
                        input.needle(),
                        input.intent(),
                        input.constraints(),
                        input.uncertainty());
                assertThat(Plan.of(off).judgement().doubts().contains(Doubt.MIDPOINT_OFF_SKIN))
                        .isEqualTo(above > 3);
            }
        }
    }

    private static List<Doubt> doubts(Curved curved) {
        return Plan.of(curved.input()).judgement().doubts();
    }
}
