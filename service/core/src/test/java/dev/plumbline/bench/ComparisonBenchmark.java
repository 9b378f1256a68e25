// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.bench;

import dev.plumbline.CaseFixture;
import dev.plumbline.deviation.Comparison;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Shape;
import dev.plumbline.observation.ObservationInput;
import dev.plumbline.plan.Hazard;
import dev.plumbline.plan.Intent;
import dev.plumbline.plan.Plan;
import dev.plumbline.plan.PlanInput;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/** How long a plan takes, and a plan with one observation and its deviation, each with all uncertainties. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 5, time = 4)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class ComparisonBenchmark {
    private final PlanInput input;
    private final PlanInput withHazards;
    private final List<ObservationInput> observed;

    public ComparisonBenchmark() {
        CaseFixture fixture = new CaseFixture();
        fixture.needleLength = OptionalDouble.of(80);
        fixture.intent(new Intent.EntryDistance(45));
        input = fixture.input();
        withHazards = withTenHazards().input();
        observed = List.of(fixture.observed(
                List.of(fixture.at(30, 10), fixture.at(15, 21)), Optional.of(fixture.at(0, 31)), true));
    }

    /** Six discs and four outlines of eight corners round the path of a proposed plan. */
    private static CaseFixture withTenHazards() {
        CaseFixture fixture = new CaseFixture();
        fixture.needleLength = OptionalDouble.of(80);
        for (int i = 0; i < 10; i++) {
            double u = -12 + 4 * i;
            double w = i % 2 == 0 ? 8 : 40;
            Shape shape = i < 6 ? new Shape.Disc(fixture.at(u, w), 2) : octagon(fixture, u, w);
            fixture.hazards.add(new Hazard("hazard " + i, Hazard.Kind.OTHER, OptionalDouble.of(1), shape));
        }
        return fixture;
    }

    private static Shape octagon(CaseFixture fixture, double u, double w) {
        List<PointPx> corners = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            corners.add(fixture.at(u + 3 * Math.cos(i * Math.PI / 4), w + 3 * Math.sin(i * Math.PI / 4)));
        }
        return new Shape.Outline(corners);
    }

    @Benchmark
    public Comparison planObservationDeviationWithTenHazards() {
        return Comparison.of(withHazards, observed);
    }

    @Benchmark
    public Plan plan() {
        return Plan.of(input);
    }

    @Benchmark
    public Comparison planObservationDeviation() {
        return Comparison.of(input, observed);
    }

    public static void main(String[] arguments) throws RunnerException {
        new Runner(new OptionsBuilder()
                        .include(ComparisonBenchmark.class.getSimpleName())
                        .build())
                .run();
    }
}
