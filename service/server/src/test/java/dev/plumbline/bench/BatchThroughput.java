// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.bench;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.BufferedOutputStream;
import java.io.BufferedReader;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;

/**
 * What {@code compare --batch} takes for many cases, JSON included, and beside it in the same run a plain Jackson read and
 * write of the same file on one thread: seconds by the clock, and CPU time of the whole process with its compiler and
 * collector, which a loaded machine disturbs less. Prints a table; run by {@code ./plumbline bench}.
 */
public final class BatchThroughput {
    private static final int CASES = 500_000;
    /** The CPU time of a process is read so often; what it uses after the last reading is lost. */
    private static final int TELL_MILLIS = 20;

    private static final Path LAUNCHER =
            Path.of("../../plumbline").toAbsolutePath().normalize();
    private static final ObjectMapper MAPPER = new ObjectMapper();

    private BatchThroughput() {}

    /** Measures so many cases, or as many as the first argument says. */
    public static void main(String[] arguments) throws Exception {
        int cases = arguments.length == 0 ? CASES : Integer.parseInt(arguments[0]);
        Path file = Files.createTempFile("plumbline-batch-", ".ndjson");
        try {
            write(file, 1);
            batch(file); // the launcher builds first where it has to
            write(file, cases);
            System.out.printf("%-44s%10s%14s%16s%n", cases + " cases", "seconds", "cases/s", "CPU us a case");
            print("plain Jackson read and write, one thread", cases, jackson(file));
            print("compare --batch, all cores", cases, batch(file));
        } finally {
            Files.delete(file);
        }
    }

    /** What a process took. */
    private record Taken(double seconds, double cpuSeconds) {}

    private static void print(String what, int cases, Taken taken) {
        System.out.printf(
                "%-44s%10.1f%14.0f%16.1f%n",
                what, taken.seconds, cases / taken.seconds, 1e6 * taken.cpuSeconds / cases);
    }

    private static void write(Path file, int cases) throws IOException {
        ObjectNode document = (ObjectNode) MAPPER.readTree("""
                {"schema":"plumbline-case/1","approach":"inPlane",
                 "frame":{"columns":640,"rows":640,"mmPerColumn":0.059375,"mmPerRow":0.059375},
                 "probe":{"kind":"linear","footprintMm":38,"midpoint":{"column":320,"row":40},"needleSide":"right"},
                 "marks":{"target":{"column":320,"row":360},"skin":[{"column":0,"row":40},{"column":640,"row":40}]},
                 "needle":{"gauge":22,"lengthMm":50},"intent":{"entryDistanceMm":29},
                 "observations":[{"id":"o","phase":"finalTip","tip":{"column":322,"row":360},"tipIsTip":true,
                   "shaft":[{"column":600,"row":180},{"column":360,"row":336}]}]}
                """);
        Random random = new Random(1);
        ObjectNode target = (ObjectNode) document.path("marks").path("target");
        try (BufferedWriter out = Files.newBufferedWriter(file)) {
            for (int i = 0; i < cases; i++) {
                document.put("caseId", "case-" + i);
                target.put("column", 300 + 40 * random.nextDouble()).put("row", 340 + 40 * random.nextDouble());
                out.write(document.toString());
                out.write('\n');
            }
        }
    }

    /** In a process of its own, so that its start and its compiler count as those of the batch do. */
    private static Taken jackson(Path file) throws IOException, InterruptedException {
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        String classPath = System.getProperty("java.class.path");
        return taken(List.of(
                java, "-XX:+UseSerialGC", "-Xmx512m", "-cp", classPath, Plain.class.getName(), file.toString()));
    }

    private static Taken batch(Path file) throws IOException, InterruptedException {
        return taken(List.of(LAUNCHER.toString(), "compare", "--batch", file.toString()));
    }

    private static Taken taken(List<String> command) throws IOException, InterruptedException {
        long start = System.nanoTime();
        Process process = new ProcessBuilder(command)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        double cpu = 0;
        while (!process.waitFor(TELL_MILLIS, TimeUnit.MILLISECONDS)) {
            cpu = process.info()
                    .totalCpuDuration()
                    .map(BatchThroughput::seconds)
                    .orElse(cpu);
        }
        if (process.exitValue() != 0) {
            throw new IllegalStateException("Did not end well: " + command);
        }
        return new Taken((System.nanoTime() - start) / 1e9, cpu);
    }

    private static double seconds(Duration duration) {
        return duration.toNanos() / 1e9;
    }

    /** Reads each line as a tree and writes it again. */
    static final class Plain {
        private static final ObjectMapper MAPPER = new ObjectMapper();

        private Plain() {}

        public static void main(String[] arguments) throws IOException {
            try (BufferedReader in = Files.newBufferedReader(Path.of(arguments[0]));
                    OutputStream out = new BufferedOutputStream(System.out)) {
                for (String line = in.readLine(); line != null; line = in.readLine()) {
                    out.write(MAPPER.writeValueAsBytes(MAPPER.readTree(line)));
                }
            }
        }
    }
}
