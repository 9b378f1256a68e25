// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What a session had given stands in each of its records as it was when the record was made. */
class SessionDoseFlowTest {
    private static final String AGENT = """
            {"id": "%s", "drug": "bupivacaine", "basis": "salt", "concentration": {"percent": 0.5},
             "purpose": "block", "route": "perineural", "volumeMl": {"given": %s}}\
            """;
    private static final String SIGNATURE = """
            {"signature": {"name": "Sample^Signer", "time": "2026-01-05T10:45:00+01:00",
              "incompleteBecause": {"patient": "-", "performer": "-", "consent": "-", "stopMoment": "-",
                "patientState": "-", "needle": "-", "aspirationAndSpread": "-", "pain": "-", "complications": "-"}}}\
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

    private static String unsigned(String caseId, String givenMl) throws Exception {
        ObjectMapper mapper = new ObjectMapper();
        ObjectNode json = (ObjectNode) mapper.readTree(SampleBodies.CASE);
        json.put("caseId", caseId).put("session", "s-1").remove("signature");
        json.putArray("agents").add(mapper.readTree(AGENT.formatted("a1", givenMl)));
        return json.toString();
    }

    private String body(String uid, String form) throws Exception {
        OpenDoor.Answer answer = door.send(
                door.request("/v1/records/" + uid).header("Accept", form).GET());
        assertThat(answer.status()).as(answer.text()).isEqualTo(200);
        return new String(answer.response().body(), ISO_8859_1);
    }

    private static String made(OpenDoor.Answer answer) throws Exception {
        assertThat(answer.status()).as(answer.text()).isEqualTo(201);
        return answer.json().path("recordUid").asText();
    }

    @Test
    void aRecordKeepsWhatTheSessionHadGivenWhenItWasMade() throws Exception {
        assertThat(door.post("/v1/cases", unsigned("c-1", "8")).status()).isEqualTo(201);
        String draft = made(door.post("/v1/records", unsigned("c-2", "4")));
        String before = body(draft, "application/dicom");
        assertThat(body(draft, "text/plain"))
                .containsPattern("Bupivacaine, over the session +60 mg\n")
                .contains("nobody of the site has approved limits")
                .contains("A share below 100 % is not a safe dose.")
                .contains("Other doses unknown.");

        assertThat(door.post("/v1/cases/c-1/agents", AGENT.formatted("a2", "5")).status())
                .isEqualTo(201);
        assertThat(body(draft, "application/dicom")).isEqualTo(before);

        String signed = made(door.post("/v1/records/" + draft + "/sign", SIGNATURE));
        assertThat(body(signed, "text/plain")).containsPattern("Bupivacaine, over the session +85 mg\n");
        assertThat(body(draft, "application/dicom")).isEqualTo(before);
    }
}
