// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.deviation;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.CaseFixture;
import dev.plumbline.geometry.CaseInputs;
import dev.plumbline.geometry.DrawnInputs;
import dev.plumbline.geometry.Extents;
import dev.plumbline.geometry.Measurand;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Quantities;
import dev.plumbline.geometry.Reading;
import dev.plumbline.geometry.Readings;
import dev.plumbline.observation.ObservationDraft;
import dev.plumbline.observation.ObservationInput;
import dev.plumbline.observation.ObservationQuantity;
import dev.plumbline.observation.Observing;
import dev.plumbline.plan.Decision;
import dev.plumbline.plan.Intent;
import dev.plumbline.plan.PlanDraft;
import dev.plumbline.plan.PlanFormulas;
import dev.plumbline.plan.PlanInput;
import dev.plumbline.plan.PlanQuantity;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.apache.commons.math3.stat.descriptive.SummaryStatistics;
import org.apache.commons.math3.util.Decimal64;
import org.junit.jupiter.api.Test;

/**
 * First-order uncertainties against a Monte Carlo simulation of the same formulas, the chosen entry held fixed.
 *
 * <p>Source of the method: JCGM 101:2008. The estimate of a standard deviation from n draws is itself uncertain by {@code 1
 * / sqrt(2 n)} of its value, 1 per cent for 5000; five times that is added to the 2 per cent asked for.
 */
class MonteCarloTest {
    private static final double ASKED = 0.02;

    private static final List<PlanQuantity> PLAN = List.of(
            PlanQuantity.ANGLE_TO_SKIN,
            PlanQuantity.PATH,
            PlanQuantity.TARGET_DEPTH,
            PlanQuantity.ENTRY_FROM_TARGET_COLUMN,
            PlanQuantity.LEAD_IN,
            PlanQuantity.FIRST_SEEN_DEPTH,
            PlanQuantity.BEAM_INCIDENCE,
            PlanQuantity.ROTATION_TOLERANCE);
    private static final List<ObservationQuantity> OBSERVED = List.of(
            ObservationQuantity.ANGLE_TO_SKIN,
            ObservationQuantity.ENTRY_DISTANCE,
            ObservationQuantity.DEEPEST_SEEN_DEPTH,
            ObservationQuantity.SEEN_LENGTH,
            ObservationQuantity.TIP_DEPTH,
            ObservationQuantity.PATH,
            ObservationQuantity.TIP_TO_TARGET);
    private static final List<DeviationQuantity> DEVIATION = List.of(
            DeviationQuantity.ANGLE_TO_SKIN,
            DeviationQuantity.ENTRY_DISTANCE,
            DeviationQuantity.TIP_DEPTH,
            DeviationQuantity.PATH,
            DeviationQuantity.ALONG_PLAN,
            DeviationQuantity.ACROSS_PLAN);

    private record Drawn(PlanInput input, ObservationInput observed, double entry) {}

    /** Shaft at least 60 px long, angle 15 to 75 degrees, at most 300 px to the skin, tip clearly beside the target. */
    private static Drawn randomCase(Random random) {
        CaseFixture fixture = new CaseFixture();
        fixture.mmPerColumn = 0.05 + 0.1 * random.nextDouble();
        fixture.mmPerRow = fixture.mmPerColumn * (0.8 + 0.4 * random.nextDouble());
        fixture.targetW = 15 + 20 * random.nextDouble();
        fixture.targetU = -8 + 16 * random.nextDouble();
        double angle = Math.toRadians(20 + 45 * random.nextDouble());
        double entry = Math.max(fixture.targetU + fixture.targetW / Math.tan(angle), 24);
        fixture.intent(new Intent.EntryDistance(entry));
        double shaftAngle = Math.toRadians(15 + 60 * random.nextDouble());
        double perPixel = Math.max(fixture.mmPerColumn, fixture.mmPerRow);
        double before = (50 + 250 * random.nextDouble()) * perPixel * 0.8;
        double length = (60 + 340 * random.nextDouble()) * perPixel;
        double from = 10 + 10 * random.nextDouble();
        PointPx shallow = fixture.at(from - before * Math.cos(shaftAngle), before * Math.sin(shaftAngle));
        PointPx deep =
                fixture.at(from - (before + length) * Math.cos(shaftAngle), (before + length) * Math.sin(shaftAngle));
        double past = length + before + (20 + 50 * random.nextDouble()) * perPixel;
        PointPx tip = fixture.at(from - past * Math.cos(shaftAngle), past * Math.sin(shaftAngle));
        ObservationInput observed = fixture.observed(List.of(shallow, deep), Optional.of(tip), true);
        return new Drawn(fixture.input(), observed, entry);
    }

    private static <M extends Enum<M> & Measurand> void add(
            Map<String, SummaryStatistics> sums, List<M> measurands, Quantities<M, Decimal64> quantities, String part) {
        for (M measurand : measurands) {
            quantities
                    .number(measurand)
                    .ifPresent(number -> sums.computeIfAbsent(part + measurand.field(), name -> new SummaryStatistics())
                            .addValue(measurand.unit().fromInternal(number.getReal())));
        }
    }

    private static Map<String, SummaryStatistics> simulate(Drawn drawn, int draws, Random random) {
        Map<String, SummaryStatistics> sums = new LinkedHashMap<>();
        PlanFormulas plan = new PlanFormulas(drawn.input, Comparing.orientation(drawn.input, List.of(drawn.observed)));
        for (int i = 0; i < draws; i++) {
            CaseInputs<Decimal64> inputs =
                    new CaseInputs<>(new DrawnInputs(random), drawn.input.uncertainty(), new Extents());
            PlanDraft<Decimal64> planned =
                    plan.of(new Decision.Entry(drawn.entry), inputs).orElseThrow();
            ObservationDraft<Decimal64> seen = Observing.draft(drawn.observed, "/observations/0", planned, inputs);
            add(sums, PLAN, planned.quantities(), "plan ");
            add(sums, OBSERVED, seen.quantities(), "observed ");
            add(sums, DEVIATION, new DeviationFormulas<>(planned, seen).compare(), "deviation ");
        }
        return sums;
    }

    private static <M extends Enum<M> & Measurand> int compare(
            Map<String, SummaryStatistics> sums, List<M> measurands, Readings<M> readings, String part) {
        int compared = 0;
        for (M measurand : measurands) {
            if (readings.of(measurand) instanceof Reading.Seen seen && seen.standardUncertainty() > 0) {
                SummaryStatistics drawn =
                        Optional.ofNullable(sums.get(part + measurand.field())).orElseThrow();
                double tolerance = ASKED + 5 / Math.sqrt(2.0 * drawn.getN());
                assertThat(drawn.getStandardDeviation() / seen.standardUncertainty())
                        .as(part + measurand.field())
                        .isBetween(1 - tolerance, 1 + tolerance);
                compared++;
            }
        }
        return compared;
    }

    private static int agree(Drawn drawn, int draws, Random random) {
        Comparison comparison = Comparison.of(drawn.input, List.of(drawn.observed));
        Map<String, SummaryStatistics> sums = simulate(drawn, draws, random);
        return compare(sums, PLAN, comparison.plan().readings(), "plan ")
                + compare(sums, OBSERVED, comparison.observations().get(0).readings(), "observed ")
                + compare(sums, DEVIATION, comparison.deviations().get(0).readings(), "deviation ");
    }

    @Test
    void agreesOverTwoHundredRandomCases() {
        Random random = new Random(20260105);
        int compared = 0;
        for (int i = 0; i < 200; i++) {
            compared += agree(randomCase(random), 5_000, random);
        }
        assertThat(compared).isGreaterThan(200 * 15);
    }

    @Test
    void agreesMoreCloselyWithManyDraws() {
        Random random = new Random(7);
        for (int i = 0; i < 3; i++) {
            assertThat(agree(randomCase(random), 100_000, random)).isPositive();
        }
    }
}
