// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.app;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;

/**
 * How long a client waits for the 201 of a signed record with all its companions while records come at a steady rate,
 * counted from when each was due, so that waiting in a queue counts; and the CPU time that each takes, which other programs
 * on the machine change less. Prints a table; run by {@code ./plumbline bench}.
 */
public final class FilingLatency {
    private static final int A_SECOND = 20;
    private static final int SECONDS = 30;
    private static final int WARM_UP = 200;
    private static final int CLIENTS = 32;

    private FilingLatency() {}

    /** Measures this many records a second for so many seconds after so many before, or as the arguments say. */
    public static void main(String[] arguments) throws Exception {
        int rate = arguments.length > 0 ? Integer.parseInt(arguments[0]) : A_SECOND;
        int seconds = arguments.length > 1 ? Integer.parseInt(arguments[1]) : SECONDS;
        int warmUp = arguments.length > 2 ? Integer.parseInt(arguments[2]) : WARM_UP;
        Path folder = Files.createTempDirectory("plumbline-latency-");
        try (ServiceProcess service =
                ServiceProcess.start(ServiceProcess.Site.in(folder, ""), "-XX:TieredStopAtLevel=4")) {
            SampleWork.frames(service);
            for (int i = 0; i < warmUp; i++) {
                filed(service, "warm-" + i);
            }
            Duration before = service.cpu();
            List<Double> waits = waits(service, rate, rate * seconds);
            double cpu = service.cpu().minus(before).toMillis() / (double) waits.size();
            System.out.printf("%-60s%10s%10s%10s%n", "201 of a signed record, ms", "median", "p99", "most");
            System.out.printf(
                    "%-60s%10.0f%10.0f%10.0f%n",
                    waits.size() + " records at " + rate + " a second",
                    waits.get(waits.size() / 2),
                    waits.get((int) Math.ceil(waits.size() * 0.99) - 1),
                    waits.get(waits.size() - 1));
            System.out.printf("%-60s%10.0f%n", "of the service's CPU for each, ms", cpu);
        } finally {
            delete(folder);
        }
    }

    private static void filed(ServiceProcess service, String caseId) throws IOException, InterruptedException {
        ServiceProcess.Answer answer = service.post("/v1/records", SampleWork.signed(caseId));
        if (answer.status() != 201) {
            throw new IllegalStateException(answer.text());
        }
    }

    private static List<Double> waits(ServiceProcess service, int rate, int records) throws Exception {
        ExecutorService clients = Executors.newFixedThreadPool(CLIENTS);
        try {
            List<Future<Double>> answers = new ArrayList<>();
            long began = System.nanoTime();
            for (int i = 0; i < records; i++) {
                long due = began + (long) (i * 1e9 / rate);
                while (due - System.nanoTime() > 0) {
                    Thread.sleep(1);
                }
                String caseId = "timed-" + i;
                answers.add(clients.submit(() -> {
                    filed(service, caseId);
                    return (System.nanoTime() - due) / 1e6;
                }));
            }
            List<Double> waits = new ArrayList<>();
            for (Future<Double> answer : answers) {
                waits.add(answer.get());
            }
            waits.sort(Comparator.naturalOrder());
            return waits;
        } finally {
            clients.shutdown();
        }
    }

    private static void delete(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(path);
            }
        }
    }
}
