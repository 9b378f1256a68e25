// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.bench;

import dev.plumbline.dicom.ReportWork;
import dev.plumbline.record.CaseDocument;
import java.io.IOException;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;

/** How long one structured report of an in-plane case with one observation takes. Aims: encode 1 ms, parse 0.5 ms. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class RecordBenchmark {
    private final ReportWork work = new ReportWork();

    @Benchmark
    public byte[] encode() {
        return work.encode();
    }

    @Benchmark
    public long parse() throws IOException {
        return work.parse();
    }

    @Benchmark
    public CaseDocument caseDocument() throws IOException {
        return work.caseDocument();
    }
}
