// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The program as it is started: its own process, its own folder, stopped as an operating system stops it. */
@Timeout(value = 120, unit = TimeUnit.SECONDS)
class ServeFlowTest {
    @TempDir
    Path folder;

    private static Process plumbline(String... arguments) throws IOException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Djava.awt.headless=true",
                "-cp",
                System.getProperty("java.class.path"),
                Main.class.getName()));
        command.addAll(List.of(arguments));
        return new ProcessBuilder(command).start();
    }

    private Path config(String fields) throws IOException {
        return Files.writeString(
                folder.resolve("serve.json"),
                "{\"schema\":\"plumbline-service/1\",\"port\":0,\"dataFolder\":\"data\"" + fields + "}");
    }

    @Test
    void theDemoPlaysBothCasesAndLeavesEveryProduct() throws Exception {
        Path out = folder.resolve("demo");
        Process demo = plumbline("demo", "--once", "--out", out.toString());
        String said = new String(demo.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(demo.waitFor()).as(said).isZero();
        for (String name : List.of("in-plane", "out-of-plane")) {
            assertThat(out.resolve(name).resolve("record.dcm")).isNotEmptyFile();
            assertThat(out.resolve(name).resolve("key-objects.dcm")).isNotEmptyFile();
            assertThat(out.resolve(name).resolve("record.pdf")).isNotEmptyFile();
            assertThat(out.resolve(name)).isDirectoryContaining("glob:**/annotated-*.png");
            assertThat(out.resolve(name)).isDirectoryContaining("glob:**/presentation-*.dcm");
        }
    }

    @Test
    void servesUntilItIsAskedToStop() throws Exception {
        Process service = plumbline("serve", "--config", config("").toString());
        try (BufferedReader err =
                new BufferedReader(new InputStreamReader(service.getErrorStream(), StandardCharsets.UTF_8))) {
            String line = err.readLine();
            assertThat(line).startsWith("plumbline: listening at http://127.0.0.1:");
            URI root = URI.create(line.substring(line.indexOf("http")));
            HttpResponse<String> live = HttpClient.newHttpClient()
                    .send(
                            HttpRequest.newBuilder(root.resolve("health/live")).build(),
                            HttpResponse.BodyHandlers.ofString());
            assertThat(live.statusCode()).isEqualTo(200);
            service.destroy(); // SIGTERM
            assertThat(service.waitFor()).as("ended by the signal").isEqualTo(128 + 15);
            assertThat(Files.isRegularFile(folder.resolve("data/store.sqlite"))).isTrue();
        } finally {
            service.destroyForcibly();
        }
    }

    @Test
    void aConfigurationThatIsNotTakenIsExitTwo() throws Exception {
        Process service = plumbline(
                "serve", "--config", config(",\"needles\":\"nowhere.json\"").toString());
        String err = new String(service.getErrorStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(service.waitFor()).isEqualTo(2);
        assertThat(err).contains("nowhere.json").doesNotContain("\tat ");
    }
}
