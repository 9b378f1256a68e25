// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What the pages for log and record ask for, through a real socket. The service's clock stands at 10:30. */
class LogAndRecordRoutesFlowTest {
    private static final String EVENT = """
            {"id": "%s", "happenedAt": "2026-01-05T10:%s:00+01:00", "enteredAt": "2026-01-05T10:%s:05+01:00",
             "enteredBy": "Roe^Al", %s}\
            """;

    private OpenDoor door;

    @BeforeEach
    void open() throws Exception {
        door = new OpenDoor();
        door.postDicom("/v1/frames", SampleBodies.PLANNED_FRAME);
        door.postDicom("/v1/frames", SampleBodies.NEEDLE_FRAME);
    }

    @AfterEach
    void close() throws Exception {
        door.close();
    }

    private void openCase(String frame) throws Exception {
        OpenDoor.Answer opened = door.post("/v1/cases", """
                {"schema": "plumbline-case/1", "caseId": "c-1", "approach": "inPlane", "frame": %s,
                 "probe": {"needleSide": "right"}, "marks": {"target": {"column": 320, "row": 360}}}\
                """.formatted(frame));
        assertThat(opened.status()).as(opened.text()).isEqualTo(201);
    }

    private JsonNode afterEvent(String id, String minute, String what) throws Exception {
        OpenDoor.Answer appended = door.post("/v1/cases/c-1/events", EVENT.formatted(id, minute, minute, what));
        assertThat(appended.status()).as(appended.text()).isEqualTo(201);
        OpenDoor.Answer answer = door.get("/v1/cases/c-1/sight");
        assertThat(answer.status()).as(answer.text()).isEqualTo(200);
        return answer.json();
    }

    @Test
    void theNextStepFollowsFromTheLogAsItWouldFromAQuestion() throws Exception {
        openCase("{\"columns\": 640, \"rows\": 640, \"mmPerColumn\": 0.1, \"mmPerRow\": 0.1}");
        afterEvent("e1", "10", "\"kind\": \"puncture\"");
        JsonNode first = afterEvent("e2", "11", "\"kind\": \"sightStep\", \"state\": \"nearPart\"");
        assertThat(first.at("/asked/state").asText()).isEqualTo("nearPart");
        assertThat(first.path("step").asText()).isEqualTo("hold");
        assertThat(first.has("withoutPlanBecause")).isFalse();
        JsonNode second =
                afterEvent("e3", "12", "\"kind\": \"sightStep\", \"state\": \"nearPart\", \"step\": \"hold\"");
        JsonNode asked = door.post(
                        "/v1/sight/next",
                        "{\"approach\": \"inPlane\", \"state\": \"nearPart\", \"tried\": [\"hold\"], \"passes\": 0}")
                .json();
        assertThat(second.path("step")).isEqualTo(asked.path("step"));
        assertThat(second.path("action")).isEqualTo(asked.path("action"));
        assertThat(second.at("/asked/tried/0").asText()).isEqualTo("hold");
        JsonNode blood = afterEvent("e4", "13", "\"kind\": \"aspiration\", \"blood\": true");
        assertThat(blood.path("kind").asText()).isEqualTo("treat");
        JsonNode undone = afterEvent("e5", "14", "\"kind\": \"correction\", \"corrects\": \"e4\"");
        assertThat(undone.path("step")).isEqualTo(second.path("step"));
        assertThat(door.get("/v1/cases/nothing/sight").status()).isEqualTo(404);
    }

    @Test
    void aCaseWithoutAPlanStillGetsItsNextStep() throws Exception {
        openCase("{\"sopInstanceUid\": \"2.25.77\", \"frameNumber\": 1}");
        JsonNode answer = afterEvent("e1", "10", "\"kind\": \"sightStep\", \"state\": \"nothing\"");
        assertThat(answer.path("kind").asText()).isEqualTo("step");
        assertThat(answer.path("withoutPlanBecause").asText()).isNotBlank();
    }

    @Test
    void withoutAnApproachNoLadderHolds() throws Exception {
        door.post("/v1/cases", """
                {"schema": "plumbline-case/1", "caseId": "c-1", "marks": {"target": {"column": 320, "row": 360}},
                 "frame": {"columns": 640, "rows": 640, "mmPerColumn": 0.1, "mmPerRow": 0.1}}\
                """);
        OpenDoor.Answer answer = door.get("/v1/cases/c-1/sight");
        assertThat(answer.status()).as(answer.text()).isEqualTo(422);
        assertThat(answer.json().path("pointer").asText()).isEqualTo("/approach");
    }

    @Test
    void aRecordIsDrawnFrameByFrame() throws Exception {
        String record = "/v1/records/" + signed() + "?accept=image/svg%2Bxml";
        OpenDoor.Answer first = door.get(record + "&drawing=1");
        OpenDoor.Answer second = door.get(record + "&drawing=2");
        assertThat(first.type()).startsWith("image/svg+xml");
        assertThat(first.text()).startsWith("<svg").isNotEqualTo(second.text());
        assertThat(door.get(record).text()).hasSizeGreaterThan(first.text().length());
        assertThat(door.get(record + "&drawing=3").status()).isEqualTo(404);
        OpenDoor.Answer wrong = door.get(record + "&drawing=first");
        assertThat(wrong.status()).isEqualTo(422);
        assertThat(wrong.json().path("remedy").asText()).contains("1");
    }

    @Test
    void aRejectionNoteLeadsToTheRecordThatItWithdraws() throws Exception {
        String signed = signed();
        OpenDoor.Answer withdrawn = door.post(
                "/v1/records/" + signed + "/withdraw",
                "{\"reason\": \"other\", \"text\": \"<b>written</b> for another case\", \"by\": \"Doe^Jo\"}");
        assertThat(withdrawn.status()).as(withdrawn.text()).isEqualTo(201);
        String note = withdrawn.json().path("recordUid").asText();
        OpenDoor.Answer led = door.get("/pages/record?uid=" + note);
        assertThat(led.status()).isEqualTo(303);
        assertThat(led.header("Location")).endsWith("record?uid=" + signed);
        String page = door.get("/pages/record?uid=" + signed).text();
        assertThat(page)
                .contains("WITHDRAWN", "Withdrawn by Doe, Jo", "&lt;b&gt;written&lt;/b&gt; for another case")
                .doesNotContain("<b>written");
    }

    @Test
    void aRecordThatIsNotHeldIsSaidOnAPage() throws Exception {
        OpenDoor.Answer page = door.get("/pages/record?uid=1.2.3");
        assertThat(page.status()).isEqualTo(404);
        assertThat(page.type()).startsWith("text/html");
        assertThat(page.header("Content-Security-Policy")).contains("default-src 'none'");
        assertThat(page.text()).contains("No record with this UID is held here.", "href=\"list\"");
        assertThat(door.get("/pages/record").status()).isEqualTo(404);
    }

    @Test
    void whereACaseGoesIsListedByItsName() throws Exception {
        signed();
        assertThat(door.get("/v1/dispatch?caseId=nothing").json().path("dispatches"))
                .isEmpty();
        assertThat(door.get("/v1/dispatch?caseId=c-1&state=none").status()).isEqualTo(422);
    }

    private String signed() throws Exception {
        OpenDoor.Answer kept = door.post("/v1/records", SampleBodies.CASE);
        assertThat(kept.status()).as(kept.text()).isEqualTo(201);
        return kept.json().path("recordUid").asText();
    }
}
