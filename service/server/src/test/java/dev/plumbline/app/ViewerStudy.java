// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.config.Network;
import dev.plumbline.dicom.SampleCases;
import dev.plumbline.dicom.SampleObjects;
import dev.plumbline.document.CaseJson;
import dev.plumbline.samples.SampleSet;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.StreamSupport;

/** The two frames of the in-plane sample in a service, the marks a person would draw on them, and what becomes of them. */
final class ViewerStudy implements AutoCloseable {
    static final SampleSet SET = new SampleSet(1);
    static final SampleObjects OBJECTS = new SampleObjects(SET);
    static final String PLANNED = OBJECTS.sopInstanceUid(SET.inPlanePlan());
    static final String OBSERVED = OBJECTS.sopInstanceUid(SET.inPlaneNeedle());
    static final JsonNode CASE = CaseJson.write(SampleCases.held(SET).inPlane());

    /** A hand on a mouse: whole pixels of the screen, and up to 1.3 px of the picture as measured with this viewer. */
    static final double BY_HAND_PX = 1.5;

    /** Half of the 1/64 px that marks are rounded to when they are taken in, and a float's rounding. */
    private static final double GRID_PX = 1.0 / 128 + 1e-4;

    private static final ObjectMapper JSON = new ObjectMapper();

    private final SampleService running;
    private final HttpClient http = HttpClient.newHttpClient();
    final DemoClient client;

    private ViewerStudy(SampleService running) {
        this.running = running;
        client = running.client();
    }

    /** A service that holds nothing yet. */
    static ViewerStudy empty(Path data, Network network) throws IOException {
        return new ViewerStudy(SampleService.start(data, network));
    }

    /** A service that holds both frames. */
    static ViewerStudy withFrames(Path data) throws IOException {
        ViewerStudy study = empty(data, Network.NONE);
        for (byte[] frame : frames()) {
            study.client.postDicom("/v1/frames", frame);
        }
        return study;
    }

    static List<byte[]> frames() {
        return List.of(OBJECTS.file(SET.inPlanePlan()), OBJECTS.file(SET.inPlaneNeedle()));
    }

    /** Target and skin on the one frame, the needle on the other: what {@code draw.mjs} draws by mouse. */
    static String drawing() {
        ArrayNode frames = JSON.createArrayNode();
        ObjectNode planned = frames.addObject().put("frame", PLANNED);
        planned.putObject("lines").set("skin", ends(CASE.at("/marks/skin/0"), last(CASE.at("/marks/skin"))));
        planned.putObject("arrows").set("target", headed(CASE.at("/marks/target"), 60, 60));
        ObjectNode observed = frames.addObject().put("frame", OBSERVED);
        observed.putObject("lines").set("shaft", ends(shaft().path(0), last(shaft())));
        observed.putObject("arrows").set("tip", headed(CASE.at("/observations/0/tip"), -80, 40));
        return frames.toString();
    }

    private static JsonNode shaft() {
        return CASE.at("/observations/0/shaft");
    }

    static JsonNode last(JsonNode array) {
        return array.path(array.size() - 1);
    }

    private static ArrayNode ends(JsonNode from, JsonNode to) {
        return JSON.createArrayNode().add(pixel(from, 0, 0)).add(pixel(to, 0, 0));
    }

    private static ArrayNode headed(JsonNode head, double across, double down) {
        return JSON.createArrayNode().add(pixel(head, 0, 0)).add(pixel(head, across, down));
    }

    private static ArrayNode pixel(JsonNode point, double across, double down) {
        return JSON.createArrayNode()
                .add(point.path("column").asDouble() + across)
                .add(point.path("row").asDouble() + down);
    }

    URI address() {
        return client.uri("/");
    }

    Service service() {
        return running.service();
    }

    /** The only study that is held. */
    String uid() {
        return only("/dicomweb/studies").at("/0020000D/Value/0").asText();
    }

    JsonNode only(String search) {
        JsonNode found = client.getJson(search);
        assertThat(found).hasSize(1);
        return found.path(0);
    }

    /** What a report of the study draws, as stored. */
    List<ReportLines.Line> lines(String series) {
        JsonNode found = StreamSupport.stream(
                        client.getJson("/dicomweb/instances?Modality=SR&includefield=all")
                                .spliterator(),
                        false)
                .filter(report -> report.at("/0008103E/Value/0").asText().equals(series))
                .reduce((one, other) -> {
                    throw new AssertionError("more than one report " + series);
                })
                .orElseThrow(() -> new AssertionError("no report " + series));
        return ReportLines.of(client.getJson(instance(found) + "/metadata").path(0));
    }

    static String instance(JsonNode found) {
        return "/dicomweb/studies/" + found.at("/0020000D/Value/0").asText() + "/series/"
                + found.at("/0020000E/Value/0").asText() + "/instances/"
                + found.at("/00080018/Value/0").asText();
    }

    /** The viewer's report holds what was drawn where it was drawn, and the case took exactly that. */
    JsonNode assertDrawnMarksAreTheCases() {
        List<ReportLines.Line> stored = lines("Needle marks");
        assertThat(stored)
                .extracting(ReportLines.Line::label)
                .containsExactlyInAnyOrder("skin", "target", "shaft", "tip");
        JsonNode account = client.getJson("/v1/studies/" + uid() + "/marks");
        assertThat(account.path("unmatched")).as(account.toString()).isEmpty();
        assertThat(account.path("refused")).as(account.toString()).isEmpty();
        assertThat(account.path("questions")).as(account.toString()).isEmpty();
        assertThat(account.path("placed")).as(account.toString()).hasSize(4);
        JsonNode held = client.getJson("/v1/cases/" + account.path("caseId").asText());
        assertThat(held.at("/frame/sopInstanceUid").asText()).isEqualTo(PLANNED);
        assertThat(held.at("/observations/0/frame/sopInstanceUid").asText()).isEqualTo(OBSERVED);
        for (ReportLines.Line line : stored) {
            boolean needle = line.label().equals("shaft") || line.label().equals("tip");
            assertThat(line.image()).as(line.label()).isEqualTo(needle ? OBSERVED : PLANNED);
            String at = (needle ? "/observations/0/" : "/marks/") + line.label();
            int points = line.label().equals("skin") || line.label().equals("shaft") ? 2 : 1;
            for (int i = 0; i < points; i++) {
                String end = points == 1 ? at : at + "/" + i;
                JsonNode meant = points == 1 ? CASE.at(at) : i == 0 ? CASE.at(at + "/0") : last(CASE.at(at));
                near(line.label() + " as stored", line.data()[2 * i], meant.path("column"), BY_HAND_PX);
                near(line.label() + " as stored", line.data()[2 * i + 1], meant.path("row"), BY_HAND_PX);
                near(line.label() + " in the case", line.data()[2 * i], held.at(end + "/column"), GRID_PX);
                near(line.label() + " in the case", line.data()[2 * i + 1], held.at(end + "/row"), GRID_PX);
            }
        }
        return account;
    }

    private static void near(String what, double stored, JsonNode meant, double within) {
        assertThat(stored).as(what).isCloseTo(meant.asDouble(Double.NaN), within(within));
    }

    /** Says through the API what a drawn case lacks, and signs its record. */
    JsonNode signed(JsonNode account) {
        String caseId = account.path("caseId").asText();
        String at = "/v1/cases/" + caseId;
        set(at + "/approach", "{\"approach\":\"inPlane\"}");
        for (String part : List.of("probe", "needle", "intent", "context")) {
            set(at + "/" + part, CASE.path(part).toString());
        }
        String observation = client.getJson(at).at("/observations/0/id").asText();
        set(at + "/observations/" + observation, "{\"tipIsTip\":true,\"phase\":\"finalTip\"}");
        assertThat(client.getJson("/v1/studies/" + uid() + "/marks").path("lacks"))
                .isEmpty();
        String record = client.postJson(
                        "/v1/records",
                        JSON.createObjectNode().put("caseId", caseId).toString())
                .path("recordUid")
                .asText();
        JsonNode signed = client.postJson(
                "/v1/records/" + record + "/sign",
                "{\"signature\":{\"name\":\"Sample^Signer\",\"organization\":\"Sample Hospital\",\"time\":\"2026-01-05T10:15:00+01:00\"}}");
        assertThat(signed.path("state").asText()).as(signed.toString()).isEqualTo("signed");
        return signed;
    }

    /** The signed record of the drawn case is on the screen: our lines at their pixels, our labels with our numbers. */
    void assertRecordIsShown(Sitting sitting, JsonNode account) {
        JsonNode numbers = client.postJson(
                "/v1/comparisons",
                client.getJson("/v1/cases/" + account.path("caseId").asText()).toString());
        String plan = degrees("Plan ", numbers.at("/plan/angleToSkinDeg/value"));
        String observed = degrees("Observed ", numbers.at("/observations/0/angleToSkinDeg/value"));
        List<ReportLines.Line> written = lines("Needle path record");
        for (String label : List.of(plan, observed)) {
            String image = label.equals(plan) ? PLANNED : OBSERVED;
            ReportLines.Line line = line(written, label, image);
            assertThat(sitting.shows(line))
                    .as(label + " among " + sitting.found().path("overlays"))
                    .isTrue();
            assertThat(sitting.textsInside(image))
                    .as("readable without zooming")
                    .anyMatch(text -> text.startsWith(label));
        }
        assertThat(sitting.shows(line(written, plan, OBSERVED)))
                .as("the plan beside the needle")
                .isTrue();
        double[] path = line(written, observed, OBSERVED).data();
        JsonNode tip = CASE.at("/observations/0/tip");
        near("tip", path[path.length - 2], tip.path("column"), BY_HAND_PX);
        near("tip", path[path.length - 1], tip.path("row"), BY_HAND_PX);
    }

    private static String degrees(String word, JsonNode angle) {
        assertThat(angle.isNumber()).as(word).isTrue();
        return String.format(Locale.ROOT, "%s%.1f\u00b0", word, angle.asDouble());
    }

    /** The line that carries a label on an image. */
    static ReportLines.Line line(List<ReportLines.Line> written, String label, String image) {
        return written.stream()
                .filter(line -> line.label().equals(label)
                        && line.image().equals(image)
                        && line.type().equals("POLYLINE"))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no line " + label + " on " + image));
    }

    private void set(String path, String part) {
        try {
            HttpResponse<String> answer = http.send(
                    HttpRequest.newBuilder(client.uri(path))
                            .header("Content-Type", "application/json")
                            .header("If-Match", "*")
                            .POST(BodyPublishers.ofString(part))
                            .build(),
                    BodyHandlers.ofString());
            assertThat(answer.statusCode()).as(path + ": " + answer.body()).isEqualTo(201);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    @Override
    public void close() throws IOException {
        running.close();
    }
}
