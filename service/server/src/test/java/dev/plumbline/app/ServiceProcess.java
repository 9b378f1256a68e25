// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.app;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.plumbline.peer.PeerProcess;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** The service as a site runs it: its own process with a configuration file, and the commands beside it. */
final class ServiceProcess implements AutoCloseable {
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final Duration WAIT = Duration.ofSeconds(60);

    private final Process process;
    private final Path log;
    private final int port;
    private final HttpClient client =
            HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();

    private ServiceProcess(Process process, Path log, int port) {
        this.process = process;
        this.log = log;
        this.port = port;
    }

    /** What a site writes down; the service listens at a port that was free a moment ago. */
    record Site(Path config, Path data, int port) {
        /** @param more fields of the configuration after the usual ones, each with a comma before it */
        static Site in(Path folder, String more) throws IOException {
            int port = PeerProcess.freePort();
            return written(folder.resolve("plumbline.json"), folder.resolve("data"), port, more);
        }

        private static Site written(Path config, Path data, int port, String more) throws IOException {
            Files.writeString(
                    config,
                    "{\"schema\":\"plumbline-service/1\",\"port\":" + port + ",\"dataFolder\":\"" + data + "\"" + more
                            + "}");
            return new Site(config, data, port);
        }

        /** The same service on another folder. */
        Site on(Path otherData, String more) throws IOException {
            return written(config.resolveSibling("other.json"), otherData, port, more);
        }
    }

    /** An answer with its body. */
    @SuppressWarnings("ArrayRecordComponent") // read once, never compared
    record Answer(int status, byte[] body) {
        JsonNode json() throws IOException {
            return MAPPER.readTree(body);
        }

        String text() {
            return new String(body, StandardCharsets.UTF_8);
        }
    }

    /** A command as it ended. */
    record Ended(int code, String out, String err) {}

    /** Starts the process without waiting for it to answer. */
    static ServiceProcess begin(Site site, String... jvm) throws IOException {
        return begin(site, System.getProperty("java.class.path"), jvm);
    }

    /** From another class path. */
    static ServiceProcess begin(Site site, String classPath, String[] jvm) throws IOException {
        Path log = Files.createTempFile(site.config().getParent(), "service", ".log");
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Djava.awt.headless=true",
                "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1"));
        command.addAll(List.of(jvm));
        command.addAll(List.of(
                "-cp",
                classPath,
                Main.class.getName(),
                "serve",
                "--config",
                site.config().toString()));
        Process process = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(log.toFile())
                .start();
        return new ServiceProcess(process, log, site.port());
    }

    /** Starts the process and waits until it answers. */
    static ServiceProcess start(Site site, String... jvm) throws Exception {
        ServiceProcess service = begin(site, jvm);
        service.awaitAnswer();
        return service;
    }

    void awaitAnswer() throws Exception {
        long deadline = System.nanoTime() + WAIT.toNanos();
        while (process.isAlive() && System.nanoTime() < deadline) {
            try {
                get("/health/live");
                return;
            } catch (IOException e) {
                Thread.sleep(20); // nobody there yet
            }
        }
        process.destroyForcibly();
        throw new IOException("The service does not answer: " + said());
    }

    String said() throws IOException {
        return Files.readString(log);
    }

    Answer get(String path) throws IOException, InterruptedException {
        return send(request(path).GET());
    }

    Answer get(String path, String accept) throws IOException, InterruptedException {
        return send(request(path).header("Accept", accept).GET());
    }

    Answer post(String path, String json) throws IOException, InterruptedException {
        return send(request(path).header("Content-Type", "application/json").POST(BodyPublishers.ofString(json)));
    }

    Answer postDicom(byte[] file) throws IOException, InterruptedException {
        return send(request("/v1/frames")
                .header("Content-Type", "application/dicom")
                .POST(BodyPublishers.ofByteArray(file)));
    }

    private HttpRequest.Builder request(String path) {
        return HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path))
                .timeout(WAIT);
    }

    private Answer send(HttpRequest.Builder request) throws IOException, InterruptedException {
        HttpResponse<byte[]> response = client.send(request.build(), HttpResponse.BodyHandlers.ofByteArray());
        return new Answer(response.statusCode(), response.body());
    }

    /** Waits until nothing is on its way any more. */
    JsonNode awaitProved(int records, Duration atMost) throws Exception {
        long deadline = System.nanoTime() + atMost.toNanos();
        JsonNode counts = get("/v1/status").json().path("dispatch");
        while (counts.path("proved").asInt() < records && System.nanoTime() < deadline) {
            Thread.sleep(100);
            counts = get("/v1/status").json().path("dispatch");
        }
        return counts;
    }

    /** Waits until every signed record has its companions. */
    void awaitWhole() throws Exception {
        long deadline = System.nanoTime() + WAIT.toNanos();
        while (get("/v1/status").json().path("companionsDue").path("records").asInt() > 0) {
            if (System.nanoTime() > deadline) {
                throw new IOException(
                        "Companions are still due: " + get("/v1/status").text());
            }
            Thread.sleep(20);
        }
    }

    /** As the operating system does when nothing else helps: no time for anything. */
    void kill() throws InterruptedException {
        process.destroyForcibly().waitFor();
    }

    /** Of all its threads since its start. */
    Duration cpu() {
        return process.toHandle().info().totalCpuDuration().orElseThrow();
    }

    int exitCode() throws InterruptedException {
        return process.waitFor();
    }

    /** As an operating system stops it. */
    @Override
    public void close() throws IOException {
        process.destroy();
        try {
            process.waitFor();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException(e);
        }
    }

    /** Runs a command of the program in this process. */
    static Ended run(Object... arguments) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code = Main.plumbline(new PrintWriter(out), new PrintWriter(err))
                .run(Arrays.stream(arguments).map(String::valueOf).toArray(String[]::new));
        return new Ended(code, out.toString(), err.toString());
    }
}
