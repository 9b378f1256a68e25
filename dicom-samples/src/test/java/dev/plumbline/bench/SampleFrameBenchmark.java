// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.bench;

import dev.plumbline.samples.Sample;
import dev.plumbline.samples.SampleFrame;
import dev.plumbline.samples.SampleSet;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/** How long one synthetic frame takes: 640 x 480 with one look and with three, and the 800 x 600 frame of the demo. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class SampleFrameBenchmark {
    private final SampleSet set = new SampleSet(7);

    @Param({"single-look-speckle", "pixel-spacing-only", "in-plane-needle"})
    private String name = "";

    private Sample sample = set.inPlaneNeedle();

    @Setup
    public void find() {
        sample = set.named(name);
    }

    @Benchmark
    public List<SampleFrame> frame() {
        return set.render(sample);
    }

    public static void main(String[] arguments) throws RunnerException {
        new Runner(new OptionsBuilder()
                        .include(SampleFrameBenchmark.class.getSimpleName())
                        .build())
                .run();
    }
}
