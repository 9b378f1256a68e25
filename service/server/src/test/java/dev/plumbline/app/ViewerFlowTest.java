// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.dicom.OutsideProgram;
import dev.plumbline.dicom.SampleCases;
import dev.plumbline.dicom.SampleObjects;
import dev.plumbline.document.CaseJson;
import dev.plumbline.samples.Sample;
import dev.plumbline.samples.SampleSet;
import java.io.IOException;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A web viewer of others (npm {@code @ohif/app}) in a headless browser, with nothing but this service behind it: what we
 * write is seen in it, and what is drawn in it comes back. Screenshots are left in {@code target/viewer}.
 */
class ViewerFlowTest {
    private static final String RIG = "src/test/npm-viewer/";
    private static final long LIMIT_SECONDS = 180; // a browser on a busy machine
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final SampleSet SET = new SampleSet(1);
    private static final SampleObjects OBJECTS = new SampleObjects(SET);
    private static final String PLANNED = OBJECTS.sopInstanceUid(SET.inPlanePlan());
    private static final String OBSERVED = OBJECTS.sopInstanceUid(SET.inPlaneNeedle());

    /** What the viewer rounds when it draws: a tenth of a screen pixel, which is less than one of the picture's. */
    private static final double DRAWN_PX = 0.5;

    /** A hand on a mouse: whole pixels of the screen, and up to 1.3 px of the picture as measured with this viewer. */
    private static final double BY_HAND_PX = 1.5;

    @TempDir
    Path folder;

    private SampleService running;
    private DemoClient client;

    @BeforeEach
    void start() throws IOException {
        running = SampleService.start(folder.resolve("data"));
        client = running.client();
        for (Sample sample : List.of(SET.inPlanePlan(), SET.inPlaneNeedle())) {
            client.postDicom("/v1/frames", OBJECTS.file(sample));
        }
    }

    @AfterEach
    void stop() throws IOException {
        running.close();
    }

    @Test
    void aSignedRecordIsSeenAsItWasWritten() throws Exception {
        client.postJson(
                "/v1/records", CaseJson.write(SampleCases.held(SET).inPlane()).toString());
        JsonNode seen = sit("look.mjs", "look", study(), PLANNED, OBSERVED);
        assertNothingWasRefused(seen);
        JsonNode report = seen.path("report");
        assertThat(report.path("ended").asText()).isEqualTo("resolved");
        assertThat(report.path("measurements"))
                .hasSizeGreaterThanOrEqualTo(3)
                .allSatisfy(read -> assertThat(read.path("loaded").asBoolean())
                        .as(read.path("labels").toString())
                        .isTrue());

        JsonNode planned = seen.path("overlays").path(PLANNED);
        assertThat(planned.path("image").asText()).contains(PLANNED);
        assertThat(texts(planned)).anyMatch(text -> text.startsWith("Plan 33.7\u00b0: / Depth: 30.00 mm"));
        assertThat(insideTexts(planned)).anyMatch(text -> text.startsWith("Plan 33.7\u00b0:"));
        assertDrawn(planned, report, "Plan 33.7\u00b0");

        JsonNode observed = seen.path("overlays").path(OBSERVED);
        assertThat(observed.path("image").asText()).contains(OBSERVED);
        assertThat(texts(observed)).anyMatch(text -> text.startsWith("Plan 33.7\u00b0:"));
        assertThat(texts(observed))
                .anyMatch(text -> text.startsWith("Observed 38.2\u00b0: / 4.5\u00b0 steeper: / Distance:"));
        assertDrawn(observed, report, "Observed 38.2\u00b0");

        JsonNode annotated = only("/dicomweb/instances?SOPInstanceUID="
                + seen.path("annotated").path("sopInstanceUid").asText());
        assertThat(seen.path("annotated").path("columns").asInt())
                .isEqualTo(annotated.at("/00280011/Value/0").asInt());
        assertThat(seen.path("annotated").path("rows").asInt())
                .isEqualTo(annotated.at("/00280010/Value/0").asInt());
        assertThat(seen.path("document").asText()).isEqualTo(sha256(document()));
    }

    @Test
    void marksDrawnWithTheMouseBecomeACase() throws Exception {
        double[][] skin = {{180, 26}, {560, 26}};
        double[][] shaft = {{620, 240}, {420, 400}};
        double[][] target = {{399.5, 401}, {350, 460}};
        ObjectNode marks = JSON.createObjectNode().put("frame", PLANNED);
        marks.putObject("lines").putPOJO("skin", skin).putPOJO("shaft", shaft);
        marks.putObject("arrows").putPOJO("target", target);
        JsonNode drawn = sit("draw.mjs", "draw", study(), JSON.writeValueAsString(marks));
        assertNothingWasRefused(drawn);
        assertThat(drawn.path("status").asInt()).isEqualTo(200);

        JsonNode account = client.getJson("/v1/studies/" + study() + "/marks");
        assertThat(account.path("unmatched")).as(account.toString()).isEmpty();
        assertThat(account.path("refused")).as(account.toString()).isEmpty();
        assertThat(account.path("placed")).as(account.toString()).hasSize(3);
        JsonNode held = client.getJson("/v1/cases/" + account.path("caseId").asText());
        assertThat(held.at("/frame/sopInstanceUid").asText()).isEqualTo(PLANNED);
        assertNear(held.at("/marks/target"), target[0]);
        assertNear(held.at("/marks/skin/0"), skin[0]);
        assertNear(held.at("/marks/skin/1"), skin[1]);
        assertNear(held.at("/observations/0/shaft/0"), shaft[0]);
        assertNear(held.at("/observations/0/shaft/1"), shaft[1]);
    }

    private JsonNode sit(String script, String pictures, String... arguments) throws IOException {
        List<String> command =
                new ArrayList<>(List.of("node", RIG + script, client.uri("/").toString(), "target/viewer/" + pictures));
        command.addAll(List.of(arguments));
        return JSON.readTree(OutsideProgram.run(LIMIT_SECONDS, command.toArray(String[]::new)));
    }

    /** Whatever the viewer asked for, it got, and it asked nobody else. */
    private static void assertNothingWasRefused(JsonNode sitting) {
        assertThat(sitting.path("answers"))
                .isNotEmpty()
                .allSatisfy(answer -> assertThat(answer.asText()).matches("(200|204) (GET|POST) .*"));
        assertThat(sitting.path("elsewhere")).isEmpty();
        assertThat(sitting.path("exceptions")).isEmpty();
    }

    /** The line of the report that carries the label lies on the screen where the report says. */
    private static void assertDrawn(JsonNode overlay, JsonNode report, String label) {
        String image = overlay.path("image").asText();
        JsonNode written = stream(report.path("measurements"))
                .filter(read -> read.path("labels").path(0).asText().equals(label))
                .flatMap(read -> stream(read.path("graphics")))
                .filter(graphic -> image.contains(graphic.path("image").asText()))
                .filter(graphic -> graphic.path("type").asText().equals("POLYLINE"))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no line " + label + " on " + image))
                .path("data");
        assertThat(stream(overlay.path("lines")).filter(line -> isLine(line, written)))
                .as(label + " at " + written + " among " + overlay.path("lines"))
                .isNotEmpty();
    }

    private static boolean isLine(JsonNode line, JsonNode written) {
        if (line.size() * 2 != written.size()) {
            return false;
        }
        for (int i = 0; i < written.size(); i++) {
            double off =
                    line.path(i / 2).path(i % 2).asDouble() - written.path(i).asDouble();
            if (Math.abs(off) > DRAWN_PX) {
                return false;
            }
        }
        return true;
    }

    private static void assertNear(JsonNode mark, double[] point) {
        assertThat(mark.path("column").asDouble()).isCloseTo(point[0], within(BY_HAND_PX));
        assertThat(mark.path("row").asDouble()).isCloseTo(point[1], within(BY_HAND_PX));
    }

    private static List<String> texts(JsonNode overlay) {
        return stream(overlay.path("texts"))
                .map(label -> label.path("text").asText())
                .toList();
    }

    private static List<String> insideTexts(JsonNode overlay) {
        return stream(overlay.path("texts"))
                .filter(label -> label.path("inside").asBoolean())
                .map(label -> label.path("text").asText())
                .toList();
    }

    private static Stream<JsonNode> stream(JsonNode container) {
        return StreamSupport.stream(container.spliterator(), false);
    }

    private String study() {
        return only("/dicomweb/studies").at("/0020000D/Value/0").asText();
    }

    private JsonNode only(String search) {
        JsonNode found = client.getJson(search);
        assertThat(found).hasSize(1);
        return found.path(0);
    }

    /** The bytes of the encapsulated PDF. */
    private byte[] document() {
        JsonNode page = only("/dicomweb/instances?Modality=DOC&includefield=all");
        String address = "/dicomweb/studies/" + study() + "/series/"
                + page.at("/0020000E/Value/0").asText() + "/instances/"
                + page.at("/00080018/Value/0").asText() + "/bulkdata/00420011";
        return client.get(address, "application/pdf");
    }

    private static String sha256(byte[] bytes) throws Exception {
        return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    }
}
