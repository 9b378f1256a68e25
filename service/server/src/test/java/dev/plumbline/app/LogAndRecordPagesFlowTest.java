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
import dev.plumbline.pages.ComparedRow;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.samples.Sample;
import dev.plumbline.samples.SampleSet;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The log of a case kept in a headless browser while the network comes and goes, and records read in it and on paper:
 * nothing is lost or doubled, what is shown is what the interface answers, and axe-core finds no barrier. Screenshots are
 * left in {@code target/pages}.
 */
class LogAndRecordPagesFlowTest {
    private static final String RIG = "src/test/npm-viewer/pages/";
    private static final long LIMIT_SECONDS = 300; // a browser on a busy machine
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final SampleSet SET = new SampleSet(1);
    private static final SampleCases CASES = SampleCases.held(SET);

    @TempDir
    Path folder;

    private SampleService running;

    @BeforeEach
    void start() throws IOException {
        running = SampleService.start(folder.resolve("data"));
        SampleObjects objects = new SampleObjects(SET);
        for (Sample sample :
                List.of(SET.inPlanePlan(), SET.inPlaneNeedle(), SET.outOfPlanePlan(), SET.outOfPlaneNeedle())) {
            running.client().postDicom("/v1/frames", objects.file(sample));
        }
    }

    @AfterEach
    void stop() throws IOException {
        running.close();
    }

    @Test
    void theLogIsKeptThoughTheNetworkGoesAndNothingIsLostOrDoubled() throws Exception {
        JsonNode sitting = sit("log.mjs", "log", openCase());
        assertNoBarrier(sitting);
        assertThat(sitting.path("small")).as("buttons lower than 44 px").isEmpty();
        assertThat(sitting.at("/side/text").asText()).isEqualTo("RIGHT");
        assertThat(sitting.at("/side/height").asDouble()).isGreaterThan(24);
        assertThat(sitting.path("refusedWithoutName").asText()).startsWith("Who enters?");
        assertThat(sitting.at("/card/caution").asText())
                .isEqualTo("suggestion from what you said you see; if in doubt, withdraw and ask for help");
        assertThat(sitting.path("second").asText())
                .isNotBlank()
                .isNotEqualTo(sitting.at("/card/action").asText());
        assertThat(sitting.at("/meanwhile/waiting").asText()).startsWith("4 entries wait");
        assertThat(sitting.at("/meanwhile/card").asText())
                .as("what to do with the needle depends on the sign, and the service says it")
                .isEqualTo("Stop: tip lost. Do not advance or inject.");
        assertThat(sitting.at("/meanwhile/notCounted").asText()).startsWith("1 entry that waits");
        assertThat(sitting.path("afterReload").asText()).startsWith("2 entries wait");
        assertThat(sitting.path("lost").asInt())
                .as("tries that nobody answered")
                .isGreaterThanOrEqualTo(2);
        assertThat(sitting.path("left")).as("what still waits in the browser").isEmpty();
        assertThat(sitting.path("by").asText()).isEqualTo("Roe^Al");

        JsonNode log = running.client().getJson("/v1/cases/log-1/log");
        assertThat(texts(log.path("standing"), "kind"))
                .containsExactlyInAnyOrder(
                        "stopMoment",
                        "puncture",
                        "sightStep",
                        "sightStep",
                        "sightStep",
                        "aspiration",
                        "aliquot",
                        "redirection",
                        "stop",
                        "sightStep",
                        "aliquot",
                        "aspiration",
                        "doppler",
                        "complicationsLookedFor");
        List<String> shown = StreamSupport.stream(sitting.path("entries").spliterator(), false)
                .filter(entry -> entry.path("stands").asBoolean())
                .map(entry -> entry.path("id").asText())
                .toList();
        assertThat(shown).containsExactlyInAnyOrderElementsOf(texts(log.path("standing"), "id"));
        JsonNode document = running.client().getJson("/v1/cases/log-1");
        List<String> ids = texts(document.path("events"), "id");
        assertThat(new HashSet<>(ids)).hasSameSizeAs(ids).hasSize(15 + 3); // undone, taken back, put back
        assertThat(texts(document.path("events"), "kind").subList(7, 13))
                .as("in the order they were made")
                .containsExactly("redirection", "stop", "sightStep", "aliquot", "aspiration", "pass");
        assertEnteredLater(log, sitting.path("earlier").asText());
        assertTriedSteps(log);
        assertDoses(sitting.path("doses"), log);
        assertThat(texts(document.path("checks"), "answer")).containsExactly("done", "notDone");
        assertThat(document.at("/team/0/role").asText()).isEqualTo("assistant");
    }

    private static void assertEnteredLater(JsonNode log, String happened) {
        List<JsonNode> later = StreamSupport.stream(log.path("standing").spliterator(), false)
                .filter(event -> event.path("enteredLater").asBoolean())
                .toList();
        assertThat(later).hasSize(1);
        assertThat(later.get(0).path("kind").asText()).isEqualTo("doppler");
        assertThat(later.get(0).path("happenedAt").asText()).startsWith(happened);
        assertThat(later.get(0).path("enteredAt").asText())
                .isGreaterThan(later.get(0).path("happenedAt").asText());
    }

    /** The first step was tried without a change, the second one with another view. */
    private static void assertTriedSteps(JsonNode log) {
        List<JsonNode> seen = StreamSupport.stream(log.path("standing").spliterator(), false)
                .filter(event -> event.path("kind").asText().equals("sightStep"))
                .toList();
        assertThat(seen.get(0).has("step")).isFalse();
        assertThat(seen.get(1).path("state").asText()).isEqualTo("nearPart");
        assertThat(seen.get(1).path("step").asText()).isNotBlank();
        assertThat(seen.get(2).path("state").asText()).isEqualTo("shaftAndTip");
        assertThat(seen.get(2).path("step").asText())
                .isNotBlank()
                .isNotEqualTo(seen.get(1).path("step").asText());
    }

    private void assertDoses(JsonNode shown, JsonNode log) {
        assertThat(shown.path("volumes").asText())
                .contains(log.path("injectedMl").asText() + " mL", "bupivacaine 0.5 %", "drawn up 20 mL")
                .contains(log.at("/agents/0/massMg/drawnUp").asText() + " mg");
        assertThat(log.path("injectedMl").asInt()).isEqualTo(8);
        JsonNode budget = running.client().getJson("/v1/sessions/monday-3").path("doseBudget");
        for (String stage : List.of("given", "drawnUp")) {
            JsonNode total = budget.at("/stages/" + stage + "/totals/0");
            assertThat(total.path("drug").asText()).isEqualTo("bupivacaine");
            assertThat(shown.path("table").asText())
                    .contains(String.format(
                            Locale.ROOT,
                            "%s mg (%.2f mg/kg)",
                            total.path("massMg").asText(),
                            total.at("/mgPerKg/value").asDouble()));
        }
        assertThat(shown.path("words").asText()).contains("A share below 100 % is not a safe dose.");
    }

    @Test
    void aRecordIsReadWithItsAmendmentAndWithdrawalOnTheScreenAndOnPaper() throws Exception {
        String signed = sign(CASES.inPlane());
        ObjectNode changed = CaseJson.write(CASES.inPlane());
        changed.withObjectProperty("intent").put("entryDistanceMm", 44);
        changed.withObjectProperty("signature").put("time", "2026-01-05T11:30:00+01:00");
        ObjectNode amendment = JSON.createObjectNode().put("reason", "entry was read off wrongly");
        amendment.set("case", changed);
        String amended = step(signed, "amend", amendment);
        String withdrawn = sign(CASES.outOfPlane());
        String note = step(
                withdrawn,
                "withdraw",
                JSON.createObjectNode()
                        .put("reason", "wrongPatientOrSide")
                        .put("text", "the left side was meant")
                        .put("by", "Doe^Jo"));

        JsonNode sitting = sit("record.mjs", "record", signed, amended, withdrawn);
        assertNoBarrier(sitting);
        for (String uid : List.of(signed, amended, withdrawn)) {
            JsonNode seen = sitting.path(uid.equals(signed) ? "signed" : uid.equals(amended) ? "amended" : "withdrawn");
            JsonNode record = record(uid);
            assertThat(seen.path("side").asText())
                    .isEqualToIgnoringCase(record.at("/case/context/laterality").asText());
            assertThat(seen.path("pictured")).isNotEmpty().allMatch(JsonNode::asBoolean);
            assertCompared(seen.path("tables"), record);
            assertLinks(seen, uid);
        }
        assertThat(sitting.at("/signed/standing").asText()).contains("a later one stands in its place");
        assertThat(sitting.at("/amended/text").asText()).contains("entry was read off wrongly", signed);
        assertThat(sitting.at("/withdrawn/standing").asText()).startsWith("WITHDRAWN");
        assertThat(sitting.at("/withdrawn/text").asText())
                .contains("Withdrawn by Doe, Jo", "the left side was meant", "Signed by");
        assertThat(sitting.path("unknown").asText()).contains("No record with this UID is held here.");
        assertThat(new String(running.client().get("/v1/records/" + note, "application/json"), StandardCharsets.UTF_8))
                .contains("withdrawal");

        assertThat(texts(sitting.path("inPrint"))).containsExactly("rgb(255, 255, 255)", "none");
        String pages =
                new String(OutsideProgram.run("pdfinfo", "target/pages/record/record.pdf"), StandardCharsets.UTF_8);
        assertThat(pages).contains("(A4)").containsPattern("Pages: +[123]\\n");
        String paper = new String(
                OutsideProgram.run("pdftotext", "-layout", "target/pages/record/record.pdf", "-"),
                StandardCharsets.UTF_8);
        assertThat(paper.replaceAll("\\s+", " "))
                .contains("Sample, Case One", "RIGHT", "Not a medical device")
                .contains(ComparedRow.ALL.get(0).difference(record(signed).at("/deviations/0")));
    }

    private static void assertLinks(JsonNode seen, String uid) {
        assertThat(texts(seen.path("links")))
                .anyMatch(link -> link.endsWith(uid + "?accept=application/dicom"))
                .anyMatch(link -> link.endsWith(uid + "?accept=application/json"))
                .anyMatch(link -> link.endsWith(uid + "?accept=application/pdf"))
                .anyMatch(link -> link.contains("log?case="));
    }

    private static void assertCompared(JsonNode tables, JsonNode record) {
        assertThat(tables).hasSameSizeAs(record.path("observations")).isNotEmpty();
        int compared = 0;
        for (int i = 0; i < tables.size(); i++) {
            for (ComparedRow row : ComparedRow.ALL) {
                JsonNode difference = record.path("deviations").path(i).path(row.observed());
                JsonNode cells = tables.get(i).path("rows").path(row.observed());
                boolean otherApproach = difference.path("reason").asText().equals("notInThisPlane");
                assertThat(difference.isMissingNode()).isFalse();
                assertThat(cells.isMissingNode()).isEqualTo(otherApproach);
                if (difference.path("value").isNumber()) {
                    String number = cells.path(3).asText().split(" ", 2)[0];
                    assertThat(Double.parseDouble(number))
                            .isCloseTo(difference.path("value").asDouble(), within(0.0501));
                    assertThat(cells.path(3).asText())
                            .contains(
                                    difference.path("exceedsUncertainty").asBoolean()
                                            ? "more than the measurement's uncertainty"
                                            : "no difference that this measurement could show");
                    compared++;
                }
            }
        }
        assertThat(compared).isGreaterThanOrEqualTo(3);
    }

    private String openCase() throws IOException {
        ObjectNode json = CaseJson.write(CASES.inPlane());
        json.remove(List.of("signature", "observations"));
        json.put("caseId", "log-1").put("session", "monday-3");
        json.set("context", JSON.readTree("""
                {"block": "axillaryBrachialPlexus", "laterality": "right", "patientState": "awake",
                 "weight": {"kg": 70, "source": "measured"}, "otherLocalAnaestheticToday": {"answer": "askedNone"}}
                """));
        running.client().postJson("/v1/cases", json.toString());
        return "log-1";
    }

    private String sign(CaseDocument document) {
        return running.client()
                .postJson("/v1/records", CaseJson.write(document).toString())
                .path("recordUid")
                .asText();
    }

    private String step(String uid, String what, JsonNode body) {
        return running.client()
                .postJson("/v1/records/" + uid + "/" + what, body.toString())
                .path("recordUid")
                .asText();
    }

    private JsonNode record(String uid) throws IOException {
        return JSON.readTree(running.client().get("/v1/records/" + uid, "application/json"));
    }

    private JsonNode sit(String script, String pictures, String... arguments) throws IOException {
        List<String> command = new ArrayList<>(
                List.of("node", RIG + script, running.client().uri("/").toString(), "target/pages/" + pictures));
        command.addAll(List.of(arguments));
        return JSON.readTree(OutsideProgram.run(LIMIT_SECONDS, command.toArray(String[]::new)));
    }

    private static void assertNoBarrier(JsonNode sitting) {
        assertThat(sitting.path("barriers")).isEmpty();
        assertThat(sitting.path("policy")).isEmpty();
        assertThat(sitting.path("elsewhere")).isEmpty();
        assertThat(sitting.path("exceptions")).isEmpty();
        assertThat(sitting.path("tooWide")).isNotEmpty().noneMatch(JsonNode::asBoolean);
    }

    private static List<String> texts(JsonNode array, String field) {
        return StreamSupport.stream(array.spliterator(), false)
                .map(each -> each.path(field).asText())
                .toList();
    }

    private static List<String> texts(JsonNode array) {
        return StreamSupport.stream(array.spliterator(), false)
                .map(JsonNode::asText)
                .toList();
    }
}
