// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpRequest;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A case kept at the bedside, item by item, through a real socket. The service's clock stands at 10:30. */
class BedsideFlowTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    private OpenDoor door;

    @BeforeEach
    void open() throws Exception {
        door = new OpenDoor();
    }

    @AfterEach
    void close() throws Exception {
        door.close();
    }

    private static String plain(String caseId, String more) {
        return """
            {"schema": "plumbline-case/1", "caseId": "%s", "approach": "inPlane",
             "frame": {"columns": 640, "rows": 640, "mmPerColumn": 0.1, "mmPerRow": 0.1},
             "marks": {"target": {"column": 320, "row": 360}}%s}\
            """.formatted(caseId, more);
    }

    private void openCase(String caseId, String more) throws Exception {
        assertThat(door.post("/v1/cases", plain(caseId, more)).status()).isEqualTo(201);
    }

    private static String event(String id, String minute, String more) {
        return """
            {"id": "%s", "happenedAt": "2026-01-05T10:%s:00+01:00", "enteredAt": "2026-01-05T10:%s:05+01:00",
             "enteredBy": "Roe^Al", %s}\
            """.formatted(id, minute, minute, more);
    }

    private OpenDoor.Answer append(String part, String body) throws Exception {
        return door.post("/v1/cases/c-1/" + part, body);
    }

    private OpenDoor.Answer replace(String part, String body, String ifMatch) throws Exception {
        return door.send(door.request("/v1/cases/c-1/" + part)
                .header("Content-Type", "application/json")
                .header("If-Match", ifMatch)
                .POST(HttpRequest.BodyPublishers.ofString(body)));
    }

    private static String problem(OpenDoor.Answer answer) throws Exception {
        assertThat(answer.type()).isEqualTo("application/problem+json");
        assertThat(answer.json().path("remedy").asText()).isNotBlank();
        return answer.status() + " " + answer.json().path("type").asText().replace("urn:plumbline:problem:", "") + " "
                + answer.json().path("pointer").asText();
    }

    @Test
    void whatIsAppendedStandsInTheCase() throws Exception {
        openCase("c-1", "");
        String puncture = event("e1", "00", "\"kind\": \"puncture\"");
        OpenDoor.Answer first = append("events", puncture);
        assertThat(first.status()).as(first.text()).isEqualTo(201);
        assertThat(first.json().path("appended").get(0).asText()).isEqualTo("e1");
        assertThat(append("agents", """
            {"id": "a1", "drug": "bupivacaine", "basis": "salt", "concentration": {"percent": 0.5},
             "additives": [{"drug": "epinephrine", "concentration": {"microgramsPerMl": 5}}],
             "route": "perineural", "volumeMl": {"drawnUp": 20}}\
            """).status()).isEqualTo(201);
        assertThat(append("team", "{\"id\": \"t1\", \"name\": \"Roe^Al\", \"role\": \"recorder\"}")
                        .status())
                .isEqualTo(201);
        assertThat(append("checks", """
            {"id": "k1", "check": "survey", "answer": "done", "by": "Roe^Al",
             "at": "2026-01-05T09:58:00+01:00"}\
            """).status()).isEqualTo(201);
        assertThat(append("observations", """
            {"id": "obs-1", "phase": "finalTip", "shaft": [{"column": 600, "row": 180}, {"column": 360, "row": 336}]}\
            """).status()).isEqualTo(201);
        OpenDoor.Answer held = door.get("/v1/cases/c-1");
        JsonNode document = held.json();
        assertThat(document.path("events").get(0).path("kind").asText()).isEqualTo("puncture");
        assertThat(document.path("agents")
                        .get(0)
                        .path("concentration")
                        .path("percent")
                        .doubleValue())
                .isEqualTo(0.5);
        assertThat(document.path("team")).hasSize(1);
        assertThat(document.path("checks")).hasSize(1);
        assertThat(document.path("observations")).hasSize(1);
        assertThat(held.header("ETag")).matches("\"[0-9a-f]{32}\"");
    }

    @Test
    void sendingAgainIsHarmlessAndOtherContentIsRefused() throws Exception {
        openCase("c-1", "");
        String puncture = event("e1", "00", "\"kind\": \"puncture\"");
        OpenDoor.Answer first = append("events", puncture);
        OpenDoor.Answer again = append("events", puncture);
        assertThat(again.status()).isEqualTo(200);
        assertThat(again.json().path("known").get(0).asText()).isEqualTo("e1");
        assertThat(again.header("ETag")).isEqualTo(first.header("ETag"));
        assertThat(problem(append("events", event("e1", "01", "\"kind\": \"puncture\""))))
                .isEqualTo("409 conflict /id");
        assertThat(problem(append(
                        "events",
                        "[" + event("e2", "02", "\"kind\": \"pass\"") + "," + event("e1", "01", "\"kind\": \"pass\"")
                                + "]")))
                .isEqualTo("409 conflict /1/id");
        assertThat(door.get("/v1/cases/c-1").json().path("events"))
                .as("all or none")
                .hasSize(1);
        OpenDoor.Answer mixed =
                append("events", "[" + puncture + "," + event("e2", "02", "\"kind\": \"needleOut\"") + "]");
        assertThat(mixed.status()).isEqualTo(201);
        assertThat(mixed.json().path("appended")).hasSize(1);
        assertThat(mixed.json().path("known")).hasSize(1);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "events|{\"id\":\"e1\",\"kind\":\"puncture\",\"happenedAt\":\"2026-01-05T11:00:00+01:00\",\"enteredAt\":\"2026-01-05T11:00:00+01:00\",\"enteredBy\":\"x\"}|422"
                        + " invalid-value /happenedAt",
                "events|{\"id\":\"e1\",\"kind\":\"puncture\",\"happenedAt\":\"2026-01-05T10:01:00+01:00\",\"enteredAt\":\"2026-01-05T10:00:00+01:00\",\"enteredBy\":\"x\"}|422"
                        + " invalid-value /happenedAt",
                "events|{\"id\":\"e1\",\"kind\":\"leap\",\"happenedAt\":\"2026-01-05T10:00:00+01:00\",\"enteredAt\":\"2026-01-05T10:00:00+01:00\",\"enteredBy\":\"x\"}|422"
                        + " invalid-value /kind",
                "events|{\"kind\":\"puncture\"}|422 missing-field /id",
                "events|{\"id\":\"e1\",\"kind\":\"sightStep\",\"state\":\"everything\",\"happenedAt\":\"2026-01-05T10:00:00+01:00\",\"enteredAt\":\"2026-01-05T10:00:00+01:00\",\"enteredBy\":\"x\"}|422"
                        + " invalid-value /state",
                "events|{\"id\":\"e1\",\"kind\":\"sightStep\",\"state\":\"noDot\",\"happenedAt\":\"2026-01-05T10:00:00+01:00\",\"enteredAt\":\"2026-01-05T10:00:00+01:00\",\"enteredBy\":\"x\"}|422"
                        + " invalid-value /state",
                "events|{\"id\":\"e1\",\"kind\":\"aliquot\",\"volumeMl\":-3,\"fluid\":\"saline\",\"happenedAt\":\"2026-01-05T10:00:00+01:00\",\"enteredAt\":\"2026-01-05T10:00:00+01:00\",\"enteredBy\":\"x\"}|422"
                        + " invalid-value /volumeMl",
                "events|{\"id\":\"e1\",\"kind\":\"aliquot\",\"volumeMl\":3,\"agent\":\"a9\",\"happenedAt\":\"2026-01-05T10:00:00+01:00\",\"enteredAt\":\"2026-01-05T10:00:00+01:00\",\"enteredBy\":\"x\"}|422"
                        + " invalid-value /agent",
                "events|{\"id\":\"e1\",\"kind\":\"puncture\",\"blood\":true,\"happenedAt\":\"2026-01-05T10:00:00+01:00\",\"enteredAt\":\"2026-01-05T10:00:00+01:00\",\"enteredBy\":\"x\"}|422"
                        + " contradictory-fields /blood",
                "events|{\"id\":\"e1\",\"kind\":\"correction\",\"corrects\":\"e0\",\"happenedAt\":\"2026-01-05T10:00:00+01:00\",\"enteredAt\":\"2026-01-05T10:00:00+01:00\",\"enteredBy\":\"x\"}|422"
                        + " invalid-value /corrects",
                "events|{\"id\":\"e1\",\"kind\":\"stopMoment\",\"names\":[\"Doe^Jo\",\"Roe^Al\"],\"block\":\"x\",\"side\":\"bilateral\",\"markSeen\":true,\"consentSeen\":true,\"happenedAt\":\"2026-01-05T10:00:00+01:00\",\"enteredAt\":\"2026-01-05T10:00:00+01:00\",\"enteredBy\":\"x\"}|422"
                        + " invalid-value /side",
                "events|{\"id\":\"e1\",\"kind\":\"stopMoment\",\"names\":[\"Doe^Jo\",\"doe^jo\"],\"block\":\"x\",\"side\":\"left\",\"markSeen\":true,\"consentSeen\":true,\"happenedAt\":\"2026-01-05T10:00:00+01:00\",\"enteredAt\":\"2026-01-05T10:00:00+01:00\",\"enteredBy\":\"x\"}|422"
                        + " invalid-value /names",
                "events|{\"id\":\"e1\",\"knd\":\"pass\"}|422 unknown-field /knd",
                "agents|{\"id\":\"a1\",\"drug\":\"magic\",\"concentration\":{\"percent\":1}}|422 invalid-value /drug",
                "agents|{\"id\":\"a1\",\"drug\":\"lidocaine\",\"concentration\":{\"percent\":101}}|422 invalid-value"
                        + " /concentration/percent",
                "agents|{\"id\":\"a1\",\"drug\":\"lidocaine\",\"concentration\":{\"percent\":1,\"mgPerMl\":10}}|422"
                        + " contradictory-fields /concentration",
                "agents|{\"id\":\"a1\",\"drug\":\"lidocaine\",\"concentration\":{\"percent\":1},\"volumeMl\":{\"given\":-1}}|422"
                        + " invalid-value /volumeMl/given",
                "agents|{\"id\":\"a1\",\"drug\":\"lidocaine\",\"concentration\":{\"percent\":1},\"volumeMl\":{\"drawnUp\":5,\"given\":6}}|422"
                        + " contradictory-fields /volumeMl",
                "agents|{\"id\":\"a1\",\"corrects\":\"a1\",\"drug\":\"lidocaine\",\"concentration\":{\"percent\":1}}|422"
                        + " invalid-value /corrects",
                "agents|[{\"id\":\"a1\",\"corrects\":\"a2\",\"drug\":\"lidocaine\",\"concentration\":{\"percent\":1}},{\"id\":\"a2\",\"corrects\":\"a1\",\"drug\":\"lidocaine\",\"concentration\":{\"percent\":1}}]|422"
                        + " invalid-value /0/corrects",
                "agents|[{\"id\":\"a1\",\"drug\":\"lidocaine\",\"concentration\":{\"percent\":1},\"volumeMl\":{\"planned\":5000}}]|422"
                        + " invalid-value /0/volumeMl/planned",
                "checks|{\"id\":\"k1\",\"check\":\"moon\",\"answer\":\"done\",\"by\":\"x\",\"at\":\"2026-01-05T10:00:00+01:00\"}|422"
                        + " invalid-value /check",
                "checks|{\"id\":\"k1\",\"check\":\"survey\",\"answer\":\"notDone\",\"by\":\"x\",\"at\":\"2026-01-05T10:00:00+01:00\"}|422"
                        + " missing-field /reason",
                "observations|{\"id\":\"o1\",\"tip\":{\"column\":641,\"row\":1}}|422 mark-outside-frame /tip",
                "events|[]|422 invalid-value ''",
                "events|3|422 invalid-value ''",
            })
    void badItemsAreNamedAndNothingIsKept(String part, String body, String expected) throws Exception {
        openCase("c-1", "");
        String before = door.get("/v1/cases/c-1").text();
        assertThat(problem(append(part, body))).isEqualTo(expected.replace("''", ""));
        assertThat(door.get("/v1/cases/c-1").text()).isEqualTo(before);
    }

    @Test
    void anUnknownCaseIsNotHeld() throws Exception {
        assertThat(problem(append("events", event("e1", "00", "\"kind\": \"pass\""))))
                .startsWith("404 not-held");
    }

    @Test
    void whoReplacesAPartSaysWhatItWasMadeFrom() throws Exception {
        openCase("c-1", "");
        String tag = door.get("/v1/cases/c-1").header("ETag");
        assertThat(problem(append("intent", "{\"angleToSkinDeg\": 35}"))).isEqualTo("428 precondition-required ");
        OpenDoor.Answer set = replace("intent", "{\"id\": \"i1\", \"angleToSkinDeg\": 35}", tag);
        assertThat(set.status()).as(set.text()).isEqualTo(201);
        assertThat(problem(replace("marks", "{\"target\": {\"column\": 300, \"row\": 350}}", tag)))
                .isEqualTo("412 precondition-failed ");
        assertThat(replace("marks", "{\"target\": {\"column\": 300, \"row\": 350}}", set.header("ETag"))
                        .status())
                .isEqualTo(201);
        assertThat(replace("intent", "{\"id\": \"i1\", \"angleToSkinDeg\": 35}", tag)
                        .status())
                .as("the same again, however late")
                .isEqualTo(200);
        assertThat(problem(replace("intent", "{\"id\": \"i1\", \"angleToSkinDeg\": 36}", "*")))
                .isEqualTo("409 conflict /id");
        assertThat(problem(replace("marks", "{\"target\": {\"column\": 641, \"row\": 350}}", "*")))
                .isEqualTo("422 mark-outside-frame /target");
        JsonNode document = door.get("/v1/cases/c-1").json();
        assertThat(document.path("marks").path("target").path("column").intValue())
                .isEqualTo(300);
        assertThat(document.path("intent").path("angleToSkinDeg").intValue()).isEqualTo(35);
    }

    @Test
    void manyPeopleAtOneCaseLoseNothing() throws Exception {
        openCase("c-1", "");
        int people = 8;
        int each = 12;
        ExecutorService all = Executors.newFixedThreadPool(people);
        try {
            List<Callable<Integer>> work = new ArrayList<>();
            for (int p = 0; p < people; p++) {
                for (int i = 0; i < each; i++) {
                    String body = event("p" + p + "-" + i, "0" + p, "\"kind\": \"redirection\"");
                    work.add(() -> append("events", body).status());
                    work.add(() -> append("events", body).status());
                }
            }
            int created = 0;
            for (Future<Integer> status : all.invokeAll(work)) {
                assertThat(status.get()).isIn(200, 201);
                created += status.get() == 201 ? 1 : 0;
            }
            assertThat(created).isEqualTo(people * each);
        } finally {
            all.shutdownNow();
        }
        assertThat(door.get("/v1/cases/c-1").json().path("events")).hasSize(people * each);
        assertThat(door.get("/v1/cases/c-1/log").json().path("redirections").intValue())
                .isEqualTo(people * each);
    }

    @Test
    void theLogTellsWhatFollowsFromIt() throws Exception {
        openCase("c-1", ", \"context\": {\"block\": \"axillaryBrachialPlexus\", \"laterality\": \"right\"}");
        append("agents", """
            {"id": "a1", "drug": "bupivacaine", "basis": "salt", "concentration": {"mgPerMl": 0.5},
             "additives": [{"drug": "epinephrine", "concentration": {"oneIn": 200000}}], "volumeMl": {"drawnUp": 20}}\
            """);
        append(
                "events",
                "["
                        + event("e1", "00", "\"kind\": \"puncture\"") + ","
                        + event("e2", "01", "\"kind\": \"aspiration\", \"blood\": false") + ","
                        + event(
                                "e3",
                                "02",
                                "\"kind\": \"aliquot\", \"agent\": \"a1\", \"volumeMl\": 5, \"spread\": \"target\"")
                        + ","
                        + event("e4", "03", "\"kind\": \"stop\", \"sign\": \"firmResistance\"") + ","
                        + event("e5", "04", "\"kind\": \"aliquot\", \"agent\": \"a1\", \"volumeMl\": 16") + ","
                        + event("e6", "05", "\"kind\": \"needleOut\"") + "]");
        JsonNode log = door.get("/v1/cases/c-1/log").json();
        assertThat(log.path("passes").intValue()).isEqualTo(1);
        assertThat(log.path("timeUnderSkinSec").path("value").intValue()).isEqualTo(300);
        assertThat(log.path("timeTipUnseenSec").path("value").isNull()).isTrue();
        assertThat(log.path("timeTipUnseenSec").path("reason").asText()).isEqualTo("notLoggedLive");
        assertThat(log.path("injectedMl").intValue()).isEqualTo(21);
        assertThat(log.path("contradictions").findValuesAsText("kind"))
                .containsExactly("punctureWithoutStopMoment", "injectedAfterStop", "moreThanDrawnUp");
        assertThat(log.path("agents").get(0).path("doubts").get(0).asText()).isEqualTo("mayBePercent");
        assertThat(log.path("agents")
                        .get(0)
                        .path("additives")
                        .get(0)
                        .path("micrograms")
                        .path("drawnUp")
                        .intValue())
                .isEqualTo(100);
        assertThat(log.path("checks").findValuesAsText("answer")).containsOnly("notRecorded");
        JsonNode budget = log.path("doseBudget");
        assertThat(budget.path("formularyInForce").booleanValue()).isFalse();
        assertThat(budget.path("noVerdictBecause").asText()).contains("example");
        assertThat(budget.path("cautions").get(0).asText()).isEqualTo("A share below 100 % is not a safe dose.");
        assertThat(budget.path("cautions").get(1).asText()).isEqualTo("Other doses unknown.");
        JsonNode given = budget.path("stages").path("given");
        assertThat(given.path("totals").get(0).path("massMg").doubleValue()).isEqualTo(10.5);
        assertThat(given.path("totals").get(0).path("mgPerKg").path("reason").asText())
                .isEqualTo("weightMissing");
        assertThat(given.path("totalSharePercent").path("reason").asText()).isEqualTo("formularyNotApproved");
        assertThat(log.path("clockDifferences").findValuesAsText("event")).hasSize(6);
        assertThat(log.path("completeness").path("signable").booleanValue()).isFalse();
    }

    @Test
    void aCorrectionStandsInThePlaceOfTheOldEvent() throws Exception {
        openCase("c-1", "");
        append("events", event("e1", "00", "\"kind\": \"aliquot\", \"fluid\": \"saline\", \"volumeMl\": 50"));
        append(
                "events",
                event(
                        "e2",
                        "01",
                        "\"kind\": \"aliquot\", \"fluid\": \"saline\", \"volumeMl\": 5, \"corrects\": \"e1\""));
        append("events", event("e3", "02", "\"kind\": \"pass\""));
        append(
                "events",
                event("e4", "03", "\"kind\": \"correction\", \"corrects\": \"e3\", \"reason\": \"wrong button\""));
        assertThat(problem(append("events", event("e5", "04", "\"kind\": \"correction\", \"corrects\": \"e3\""))))
                .isEqualTo("409 conflict /corrects");
        JsonNode log = door.get("/v1/cases/c-1/log").json();
        assertThat(log.path("injectedMl").intValue()).isEqualTo(5);
        assertThat(log.path("passes").intValue()).isZero();
        assertThat(door.get("/v1/cases/c-1").json().path("events"))
                .as("nothing is taken out")
                .hasSize(4);
    }

    @Test
    void linkedCasesShareOneBudget() throws Exception {
        String session =
                ", \"session\": \"s-1\", \"context\": {\"laterality\": \"%s\", \"weight\": {\"kg\": 70, \"source\":"
                        + " \"measured\"}}";
        openCase("c-1", session.formatted("left"));
        openCase("c-2", session.formatted("right"));
        String half =
                "{\"id\": \"a1\", \"drug\": \"bupivacaine\", \"basis\": \"salt\", \"concentration\": {\"percent\":"
                        + " 0.5}, \"volumeMl\": {\"given\": 15}}";
        assertThat(door.post("/v1/cases/c-1/agents", half).status()).isEqualTo(201);
        assertThat(door.post("/v1/cases/c-2/agents", half).status()).isEqualTo(201);
        JsonNode answer = door.get("/v1/sessions/s-1").json();
        assertThat(answer.path("cases").findValuesAsText("caseId")).containsExactly("c-1", "c-2");
        JsonNode total = answer.path("doseBudget")
                .path("stages")
                .path("given")
                .path("totals")
                .get(0);
        assertThat(total.path("massMg").intValue()).isEqualTo(150);
        assertThat(total.path("mgPerKg").path("value").doubleValue()).isEqualTo(2.142857);
        assertThat(problem(door.get("/v1/sessions/s-2"))).startsWith("404 not-held");
    }

    @Test
    void aMixtureDilutesItsParts() throws Exception {
        openCase("c-1", "");
        String agent = "{\"id\": \"%s\", \"drug\": \"%s\", \"basis\": \"salt\", \"concentration\": {\"percent\": %s},"
                + " \"mixture\": \"syringe\", \"volumeMl\": {\"drawnUp\": 10}}";
        append(
                "agents",
                "[" + agent.formatted("a1", "bupivacaine", "0.5") + "," + agent.formatted("a2", "lidocaine", "2")
                        + "]");
        JsonNode mixture = door.get("/v1/cases/c-1/log").json().path("mixtures").get(0);
        assertThat(mixture.path("volumeMl").intValue()).isEqualTo(20);
        assertThat(mixture.path("contents").get(0).path("mgPerMl").doubleValue())
                .isEqualTo(2.5);
        assertThat(mixture.path("contents").get(1).path("mgPerMl").doubleValue())
                .isEqualTo(10);
        append("events", event("e1", "00", "\"kind\": \"aliquot\", \"agent\": \"syringe\", \"volumeMl\": 4"));
        JsonNode totals = door.get("/v1/cases/c-1/log")
                .json()
                .path("doseBudget")
                .path("stages")
                .path("given")
                .path("totals");
        assertThat(totals.findValuesAsText("massMg")).containsExactly("10", "40");
    }

    @Test
    void aSignedCaseTakesNothingMore() throws Exception {
        door.postDicom("/v1/frames", SampleBodies.PLANNED_FRAME);
        door.postDicom("/v1/frames", SampleBodies.NEEDLE_FRAME);
        OpenDoor.Answer kept = door.post("/v1/records", SampleBodies.CASE);
        assertThat(kept.status()).isEqualTo(201);
        String caseId = kept.json().path("caseId").asText();
        assertThat(problem(door.post("/v1/cases/" + caseId + "/events", event("e1", "00", "\"kind\": \"pass\""))))
                .isEqualTo("409 conflict ");
        assertThat(door.post("/v1/records", SampleBodies.CASE).status()).isEqualTo(200);
    }

    @Test
    void aSignatureNeedsWhatWasKeptToBeCompleteOrExcused() throws Exception {
        door.postDicom("/v1/frames", SampleBodies.PLANNED_FRAME);
        door.postDicom("/v1/frames", SampleBodies.NEEDLE_FRAME);
        ObjectNode kept = (ObjectNode) MAPPER.readTree(SampleBodies.CASE);
        kept.putArray("events").add(MAPPER.readTree(event("e1", "00", "\"kind\": \"puncture\"")));
        OpenDoor.Answer refused = door.post("/v1/records", kept.toString());
        assertThat(problem(refused)).startsWith("422 incomplete ");
        assertThat(refused.json().path("missing").findValuesAsText("item"))
                .contains(
                        "consent",
                        "stopMoment",
                        "patientState",
                        "agents",
                        "aspirationAndSpread",
                        "pain",
                        "complications")
                .doesNotContain("patient", "block", "side");
        refused.json()
                .path("missing")
                .forEach(item -> assertThat(item.path("pointer").asText()).startsWith("/"));
        assertThat(door.rooms.holdsNothing()).as("no record").isFalse();
        assertThat(door.get("/v1/records").json().path("records")).isEmpty();
        ObjectNode reasons = ((ObjectNode) kept.path("signature")).putObject("incompleteBecause");
        refused.json()
                .path("missing")
                .forEach(item -> reasons.put(item.path("item").asText(), "logged on paper"));
        OpenDoor.Answer signed = door.post("/v1/records", kept.toString());
        assertThat(signed.status()).as(signed.text()).isEqualTo(201);
        assertThat(signed.json().path("state").asText()).isEqualTo("signed");
    }

    @Test
    void aDraftOfACaseThatHasGoneOnIsFollowedByAnother() throws Exception {
        door.postDicom("/v1/frames", SampleBodies.PLANNED_FRAME);
        OpenDoor.Answer opened = door.post("/v1/cases", SampleBodies.DRAFT);
        String caseId = opened.json().path("caseId").asText();
        String only = "{\"caseId\": \"" + caseId + "\"}";
        assertThat(door.post("/v1/records", only).json().path("revision").intValue())
                .isEqualTo(1);
        assertThat(door.post("/v1/records", only).status()).isEqualTo(200);
        door.post("/v1/cases/" + caseId + "/team", "{\"id\": \"t1\", \"name\": \"Roe^Al\"}");
        OpenDoor.Answer next = door.post("/v1/records", only);
        assertThat(next.status()).as(next.text()).isEqualTo(201);
        assertThat(next.json().path("revision").intValue()).isEqualTo(2);
        assertThat(door.post("/v1/records", SampleBodies.DRAFT).status())
                .as("the first draft again")
                .isEqualTo(200);
        assertThat(door.post("/v1/cases", SampleBodies.DRAFT).status()).isEqualTo(200);
    }

    @Test
    void theNextStepForAnUnseenNeedle() throws Exception {
        OpenDoor.Answer answer = door.post(
                "/v1/sight/next",
                "{\"approach\": \"inPlane\", \"state\": \"nearPart\", \"tried\": [\"hold\", \"image\", \"fromAbove\"],"
                        + " \"passes\": 0}");
        assertThat(answer.status()).as(answer.text()).isEqualTo(200);
        assertThat(answer.json().path("kind").asText()).isEqualTo("step");
        assertThat(answer.json().path("step").asText()).isEqualTo("rotateFar");
        assertThat(answer.json().path("moves").asText()).isEqualTo("farEnd");
        assertThat(answer.json().path("keepsStill").asText()).isEqualTo("nearEnd");
        JsonNode blood = door.post(
                        "/v1/sight/next",
                        "{\"approach\": \"inPlane\", \"state\": \"shaftAndTip\", \"signs\": [\"blood\"]}")
                .json();
        assertThat(blood.path("kind").asText()).isEqualTo("treat");
        assertThat(blood.path("action").asText()).isEqualTo("Stop. Treat the patient by the local protocol.");
        assertThat(blood.has("needle")).isFalse();
        assertThat(problem(door.post("/v1/sight/next", "{\"approach\": \"inPlane\", \"state\": \"noDot\"}")))
                .isEqualTo("422 invalid-value /state");
        assertThat(problem(door.post(
                        "/v1/sight/next",
                        "{\"approach\": \"inPlane\", \"state\": \"nothing\", \"geometry\": {\"lengthInMm\": -1}}")))
                .isEqualTo("422 invalid-value /geometry/lengthInMm");
        assertThat(problem(door.post(
                        "/v1/sight/next", "{\"approach\": \"inPlane\", \"state\": \"nothing\", \"passes\": -1}")))
                .isEqualTo("422 invalid-value /passes");
    }
}
