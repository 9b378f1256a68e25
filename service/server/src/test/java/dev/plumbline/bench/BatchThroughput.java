// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.bench;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.BufferedReader;
import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;

/**
 * How long {@code compare --batch} takes for many cases, JSON included, and beside it in the same run: a plain Jackson read
 * and write of the same file on one thread. Prints a table; run by {@code ./plumbline bench}.
 */
public final class BatchThroughput {
    private static final int CASES = 500_000;
    private static final Path LAUNCHER =
            Path.of("../../plumbline").toAbsolutePath().normalize();
    private static final ObjectMapper MAPPER = new ObjectMapper();

    private BatchThroughput() {}

    /** Measures so many cases, or as many as the first argument says. */
    public static void main(String[] arguments) throws Exception {
        int cases = arguments.length == 0 ? CASES : Integer.parseInt(arguments[0]);
        Path file = Files.createTempFile("plumbline-batch-", ".ndjson");
        try {
            write(file, cases);
            double plain = seconds(() -> readAndWrite(file));
            double batch = seconds(() -> batch(file));
            System.out.printf("%-56s%10s%14s%n", cases + " cases", "seconds", "cases a second");
            System.out.printf("%-56s%10.1f%14.0f%n", "plain Jackson read and write, one thread", plain, cases / plain);
            System.out.printf("%-56s%10.1f%14.0f%n", "compare --batch, all cores", batch, cases / batch);
        } finally {
            Files.delete(file);
        }
    }

    /** What is measured. */
    @FunctionalInterface
    private interface Work {
        void run() throws Exception;
    }

    private static double seconds(Work work) throws Exception {
        long start = System.nanoTime();
        work.run();
        return (System.nanoTime() - start) / 1e9;
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

    private static void readAndWrite(Path file) throws IOException {
        try (BufferedReader in = Files.newBufferedReader(file);
                BufferedWriter out = Files.newBufferedWriter(Path.of("/dev/null"))) {
            for (String line = in.readLine(); line != null; line = in.readLine()) {
                out.write(MAPPER.readTree(line).toString());
            }
        }
    }

    private static void batch(Path file) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(LAUNCHER.toString(), "compare", "--batch", file.toString())
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
        String err = new String(process.getErrorStream().readAllBytes(), StandardCharsets.UTF_8);
        if (process.waitFor() != 0) {
            throw new IllegalStateException("The batch did not end well: " + err);
        }
    }
}
