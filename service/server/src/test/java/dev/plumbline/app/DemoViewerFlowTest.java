// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.ConnectException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The demo with a viewer beside it, as a newcomer starts it: what it prints can be opened, and ends with it. */
@Timeout(value = 180, unit = TimeUnit.SECONDS)
class DemoViewerFlowTest {
    private static final String RIG = "src/test/npm-viewer";
    private static final int BAD_INPUT = 2;

    @TempDir
    Path folder;

    private final HttpClient http = HttpClient.newHttpClient();

    private Process demo(String rig, Map<String, String> surroundings) throws IOException {
        ProcessBuilder builder = new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Djava.awt.headless=true",
                "-D" + DemoViewer.PLACE + "=" + rig,
                "-cp",
                System.getProperty("java.class.path"),
                Main.class.getName(),
                "demo",
                "--viewer",
                "--port",
                "0",
                "--out",
                folder.toString());
        builder.environment().putAll(surroundings);
        return builder.start();
    }

    private HttpResponse<String> get(String address) throws Exception {
        return http.send(HttpRequest.newBuilder(URI.create(address)).build(), BodyHandlers.ofString());
    }

    @Test
    void servesTheViewerAndAStudyToDrawOnUntilItIsStopped() throws Exception {
        Process demo = demo(RIG, Map.of());
        String viewer;
        try (BufferedReader out =
                new BufferedReader(new InputStreamReader(demo.getInputStream(), StandardCharsets.UTF_8))) {
            List<String> said = new ArrayList<>();
            String line = out.readLine();
            while (line != null && !line.contains("what became of them")) {
                said.add(line);
                line = out.readLine();
            }
            assertThat(line).as(String.join("\n", said)).isNotNull();
            viewer = after("viewer ", said);
            String draw = after("draw on ", said);
            assertThat(draw).startsWith(viewer);
            assertThat(get(draw).body()).contains("<html");
            String study = draw.substring(draw.indexOf('=') + 1);
            HttpResponse<String> frames = get(viewer + "dicomweb/studies/" + study + "/instances");
            assertThat(frames.statusCode()).as(frames.body()).isEqualTo(200);
            assertThat(get(viewer + "dicomweb/studies").body()).contains(study);
            HttpResponse<String> marks = get(line.substring(line.indexOf("http")));
            assertThat(marks.statusCode()).isEqualTo(200);
            assertThat(marks.body())
                    .as("nothing is drawn, and no signed case stands in the way")
                    .contains("\"caseId\":null")
                    .contains("\"questions\":[]")
                    .contains("/marks/target");
            demo.destroy(); // SIGTERM
            assertThat(demo.waitFor()).as("ended by the signal").isEqualTo(128 + 15);
        } finally {
            demo.destroyForcibly();
        }
        assertThat(isGone(viewer)).as("the viewer ends with the demo").isTrue();
    }

    private boolean isGone(String viewer) throws Exception {
        for (int i = 0; i < 100; i++) {
            try {
                get(viewer);
                Thread.sleep(100);
            } catch (ConnectException e) {
                return true;
            }
        }
        return false;
    }

    private static String after(String word, List<String> said) {
        return said.stream()
                .filter(line -> line.startsWith(word))
                .map(line -> line.substring(line.indexOf("http")).split(" ", 2)[0])
                .findFirst()
                .orElseThrow(() -> new AssertionError(word + " is not said: " + String.join("\n", said)));
    }

    @Test
    void saysWhatIsMissingWhereTheViewerWasNotBrought() throws Exception {
        assertRefused(demo(folder.toString(), Map.of()), "The viewer's files are not here.");
    }

    @Test
    void saysWhatIsMissingWhereThereIsNoNode() throws Exception {
        assertRefused(demo(RIG, Map.of("PATH", folder.toString())), "Node.js");
    }

    private static void assertRefused(Process demo, String why) throws Exception {
        String said = new String(demo.getErrorStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(demo.waitFor()).as(said).isEqualTo(BAD_INPUT);
        assertThat(said).contains(why).contains("./plumbline demo --viewer").contains("Node.js 18");
    }
}
