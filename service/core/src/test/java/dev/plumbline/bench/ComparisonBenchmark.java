// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.bench;

import dev.plumbline.CaseFixture;
import dev.plumbline.deviation.Comparison;
import dev.plumbline.observation.ObservationInput;
import dev.plumbline.plan.Intent;
import dev.plumbline.plan.Plan;
import dev.plumbline.plan.PlanInput;
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
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class ComparisonBenchmark {
    private final PlanInput input;
    private final List<ObservationInput> observed;

    public ComparisonBenchmark() {
        CaseFixture fixture = new CaseFixture();
        fixture.needleLength = OptionalDouble.of(80);
        fixture.intent(new Intent.EntryDistance(45));
        input = fixture.input();
        observed = List.of(fixture.observed(
                List.of(fixture.at(30, 10), fixture.at(15, 21)), Optional.of(fixture.at(0, 31)), true));
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
