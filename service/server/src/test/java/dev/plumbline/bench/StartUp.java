// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.bench;

import java.io.IOException;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * How long one waits: for the service to be ready and for one {@code plan} from the shell, through the launcher as users
 * run it; and what the idle service holds on its heap. Prints a table; run by {@code ./plumbline bench}.
 */
public final class StartUp {
    private static final int RUNS = 5;
    private static final Path LAUNCHER =
            Path.of("../../plumbline").toAbsolutePath().normalize();
    private static final Pattern USED = Pattern.compile("used (\\d+)K");

    private StartUp() {}

    /** Measures in a folder of its own. */
    public static void main(String[] arguments) throws Exception {
        Path folder = Files.createTempDirectory("plumbline-bench-");
        launch(folder, "samples", "--out", folder.resolve("samples").toString(), "--seed", "1")
                .waitFor();
        List<Double> ready = new ArrayList<>();
        List<Double> heap = new ArrayList<>();
        List<Double> plan = new ArrayList<>();
        for (int run = 0; run < RUNS; run++) {
            serve(folder, ready, heap);
            long start = System.nanoTime();
            launch(folder, "plan", folder.resolve("samples/in-plane.case.json").toString())
                    .waitFor();
            plan.add((System.nanoTime() - start) / 1e9);
        }
        System.out.printf("%-44s%10s%10s%10s%n", "start-up, " + RUNS + " runs", "least", "median", "most");
        print("service ready after start, s", ready);
        print("idle heap after a collection, MB", heap);
        print("plumbline plan from the shell, s", plan);
    }

    private static void serve(Path folder, List<Double> ready, List<Double> heap) throws Exception {
        int port = freePort();
        Path config = folder.resolve("serve.json");
        Files.writeString(
                config,
                "{\"schema\":\"plumbline-service/1\",\"port\":" + port + ",\"dataFolder\":\""
                        + folder.resolve("data-" + port) + "\"}");
        long start = System.nanoTime();
        Process service = launch(folder, "serve", "--config", config.toString());
        try {
            while (!answers(port)) {
                if (!service.isAlive()) {
                    throw new IllegalStateException("The service did not start; see " + folder.resolve("out"));
                }
            }
            ready.add((System.nanoTime() - start) / 1e9);
            command("jcmd", String.valueOf(service.pid()), "GC.run");
            heap.add(usedMegabytes(command("jcmd", String.valueOf(service.pid()), "GC.heap_info")));
        } finally {
            service.destroy();
            service.waitFor();
        }
    }

    private static boolean answers(int port) throws InterruptedException {
        HttpRequest request = HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + "/health/ready"))
                .build();
        try {
            return HttpClient.newHttpClient()
                            .send(request, HttpResponse.BodyHandlers.discarding())
                            .statusCode()
                    == 200;
        } catch (IOException e) {
            Thread.sleep(5); // nobody listens yet
            return false;
        }
    }

    private static double usedMegabytes(String heapInfo) {
        Matcher used = USED.matcher(heapInfo);
        long kilobytes = 0;
        while (used.find() && !heapInfo.substring(0, used.start()).contains("Metaspace")) {
            kilobytes += Long.parseLong(used.group(1));
        }
        return kilobytes / 1024.0;
    }

    private static Process launch(Path folder, String... arguments) throws IOException {
        List<String> command = new ArrayList<>(List.of(LAUNCHER.toString()));
        command.addAll(List.of(arguments));
        return new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("out").toFile())
                .start();
    }

    private static String command(String... command) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String output = new String(process.getInputStream().readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
        process.waitFor();
        return output;
    }

    private static int freePort() throws IOException {
        try (ServerSocket socket = new ServerSocket(0)) {
            return socket.getLocalPort();
        }
    }

    private static void print(String what, List<Double> values) {
        Collections.sort(values);
        System.out.printf(
                "%-44s%10.2f%10.2f%10.2f%n", what, values.get(0), values.get(values.size() / 2), values.get(RUNS - 1));
    }
}
