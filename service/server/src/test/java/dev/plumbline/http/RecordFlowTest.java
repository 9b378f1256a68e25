// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import dev.plumbline.UnfitFrames;
import dev.plumbline.record.Cautions;
import java.net.http.HttpRequest;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Frames in, record out and read back, through a real socket. */
class RecordFlowTest {
    private OpenDoor door;

    @BeforeEach
    void open() throws Exception {
        door = new OpenDoor();
    }

    @AfterEach
    void close() throws Exception {
        door.close();
    }

    private void sendFrames() throws Exception {
        assertThat(door.postDicom("/v1/frames", SampleBodies.PLANNED_FRAME).status())
                .isEqualTo(201);
        assertThat(door.postDicom("/v1/frames", SampleBodies.NEEDLE_FRAME).status())
                .isEqualTo(201);
    }

    private static String problem(OpenDoor.Answer answer) throws Exception {
        assertThat(answer.type()).isEqualTo("application/problem+json");
        assertThat(answer.text()).doesNotContain("Exception").doesNotContain("\\tat ");
        assertThat(answer.json().path("remedy").asText()).isNotBlank();
        return answer.status() + " "
                + answer.json().path("type").asText().replace("urn:plumbline:problem:", "") + " "
                + answer.json().path("pointer").asText();
    }

    private OpenDoor.Answer postWithKey(String body, String key) throws Exception {
        return door.send(door.request("/v1/records")
                .header("Content-Type", "application/json")
                .header("Idempotency-Key", key)
                .POST(HttpRequest.BodyPublishers.ofString(body)));
    }

    @Test
    void aFrameIsTakenInExplainedAndShown() throws Exception {
        OpenDoor.Answer taken = door.postDicom("/v1/frames", SampleBodies.PLANNED_FRAME);
        assertThat(taken.status()).isEqualTo(201);
        assertThat(taken.json().path("sopInstanceUid").asText()).isEqualTo(SampleBodies.PLANNED_UID);
        assertThat(door.postDicom("/v1/frames", SampleBodies.PLANNED_FRAME).status())
                .isEqualTo(200);
        JsonNode explained = door.get(taken.header("Location")).json();
        assertThat(explained.path("frameCount").intValue()).isEqualTo(1);
        assertThat(explained.path("calibration").path("source").asText()).isEqualTo("ultrasoundRegions");
        assertThat(explained.path("calibration").path("mmPerColumn").doubleValue())
                .isPositive();
        assertThat(explained.path("probe").path("kind").asText()).isEqualTo("linear");
        assertThat(explained.path("text").asText()).isNotBlank();
        OpenDoor.Answer shown = door.get(taken.header("Location") + "/rendered");
        assertThat(shown.type()).isEqualTo("image/png");
        assertThat(shown.response().body()).startsWith(0x89, 'P', 'N', 'G');
        assertThat(problem(door.get("/v1/frames/" + SampleBodies.PLANNED_UID + "/2")))
                .isEqualTo("404 not-held ");
        assertThat(problem(door.get("/v1/frames/" + SampleBodies.PLANNED_UID + "/x")))
                .isEqualTo("404 not-held ");
    }

    @Test
    void aSignedCaseBecomesARecordThatIsReadBack() throws Exception {
        sendFrames();
        OpenDoor.Answer kept = door.post("/v1/records", SampleBodies.CASE);
        assertThat(kept.status()).as(kept.text()).isEqualTo(201);
        String uid = kept.json().path("recordUid").asText();
        assertThat(kept.header("Location")).isEqualTo("/v1/records/" + uid);
        assertThat(kept.json().path("state").asText()).isEqualTo("signed");

        JsonNode record = door.get(kept.header("Location")).json();
        JsonNode computed = door.post("/v1/comparisons", SampleBodies.CASE).json();
        assertThat(record.path("plan")).isEqualTo(computed.path("plan"));
        assertThat(record.path("deviations")).isEqualTo(computed.path("deviations"));
        assertThat(record.path("cautions").get(0).asText()).isEqualTo(Cautions.text());

        OpenDoor.Answer dicom = door.send(door.request(kept.header("Location")).header("Accept", "application/dicom"));
        assertThat(dicom.type()).isEqualTo("application/dicom");
        assertThat(new String(dicom.response().body(), 128, 4, java.nio.charset.StandardCharsets.US_ASCII))
                .isEqualTo("DICM");
        assertThat(problem(door.send(door.request(kept.header("Location")).header("Accept", "text/csv"))))
                .startsWith("406 not-acceptable");

        JsonNode list = door.get("/v1/records").json();
        assertThat(list.path("records")).hasSize(1);
        assertThat(list.path("records").get(0).path("recordUid").asText()).isEqualTo(uid);
        assertThat(door.get("/dicomweb/instances?SOPInstanceUID=" + uid).json()).hasSize(1);
    }

    private OpenDoor.Answer as(String location, String type) throws Exception {
        OpenDoor.Answer answer = door.send(door.request(location).header("Accept", type));
        assertThat(answer.status()).as(type).isEqualTo(200);
        assertThat(answer.type()).startsWith(type.replaceAll(",.*", ""));
        return answer;
    }

    @Test
    void aRecordIsHandedOutAsPeopleReadIt() throws Exception {
        sendFrames();
        for (String body : List.of(SampleBodies.CASE, SampleBodies.DRAFT)) {
            String location = door.post("/v1/records", body).header("Location");
            String standing = body.equals(SampleBodies.CASE) ? "signed" : "draft, not signed";
            assertThat(as(location, "text/plain").text())
                    .contains("Imaging Measurement Report, " + standing)
                    .contains(Cautions.text());
            String page =
                    as(location, "text/html,application/xhtml+xml,*/*;q=0.8").text();
            assertThat(page).startsWith("<!DOCTYPE html>").contains("<svg").contains(standing);
            assertThat(page).doesNotContain("<script").doesNotContain("src=\"http");
            assertThat(as(location, "image/svg+xml").text()).startsWith("<svg").contains("data:image/png;base64,");
            assertThat(as(location, "application/pdf").response().body()).startsWith('%', 'P', 'D', 'F', '-');
        }
    }

    /** The companions stand beside the report in the study, each kind in its own series. */
    @Test
    void everyObjectOfASignedRecordStandsInTheArchive() throws Exception {
        sendFrames();
        JsonNode kept = door.post("/v1/records", SampleBodies.CASE).json();
        assertThat(kept.path("objects").get(0)).isEqualTo(kept.path("recordUid"));
        List<String> modalities = new ArrayList<>();
        for (JsonNode object : kept.path("objects")) {
            JsonNode held = door.get("/dicomweb/instances?SOPInstanceUID=" + object.asText())
                    .json();
            assertThat(held).hasSize(1);
            modalities.add(held.get(0).path("00080060").path("Value").get(0).asText());
        }
        assertThat(modalities).containsExactly("SR", "US", "US", "PR", "PR", "DOC", "KO");
    }

    @Test
    void theSameCaseAgainIsHarmlessAndAnotherUnderItsNameIsRefused() throws Exception {
        sendFrames();
        OpenDoor.Answer first = door.post("/v1/records", SampleBodies.CASE);
        OpenDoor.Answer again = door.post("/v1/records", SampleBodies.CASE);
        assertThat(again.status()).isEqualTo(200);
        assertThat(again.json()).isEqualTo(first.json());
        String caseId = first.json().path("caseId").asText();
        String other = SampleBodies.CASE
                .replaceFirst("\\{", "{\"caseId\":\"" + caseId + "\",")
                .replace("\"entryDistanceMm\":45", "\"entryDistanceMm\":44");
        assertThat(other).contains("44");
        assertThat(problem(door.post("/v1/records", other))).isEqualTo("409 conflict /caseId");
        assertThat(door.get("/v1/records").json().path("records")).hasSize(1);
    }

    @Test
    void anIdempotencyKeyGivesTheSameAnswerAndIsNotReused() throws Exception {
        sendFrames();
        OpenDoor.Answer first = postWithKey(SampleBodies.CASE, "key-1");
        OpenDoor.Answer again = postWithKey(SampleBodies.CASE, "key-1");
        assertThat(first.status()).as(first.text()).isEqualTo(201);
        assertThat(again.status()).isEqualTo(201);
        assertThat(again.text()).isEqualTo(first.text());
        assertThat(problem(postWithKey(SampleBodies.DRAFT, "key-1"))).isEqualTo("422 key-reused ");
        assertThat(problem(postWithKey(SampleBodies.DRAFT, "two words"))).isEqualTo("422 invalid-value ");
        assertThat(door.get("/v1/records").json().path("records")).hasSize(1);
    }

    @Test
    void anIdempotencyKeyBelongsToItsBodyAlsoWhereTheCaseWasHeldBefore() throws Exception {
        sendFrames();
        door.post("/v1/records", SampleBodies.CASE);
        assertThat(postWithKey(SampleBodies.CASE, "key-2").status()).isEqualTo(200);
        assertThat(problem(postWithKey(SampleBodies.DRAFT, "key-2"))).isEqualTo("422 key-reused ");
    }

    @Test
    void aCaseIsKeptAndRecordedByItsName() throws Exception {
        sendFrames();
        OpenDoor.Answer opened = door.post("/v1/cases", SampleBodies.CASE);
        assertThat(opened.status()).as(opened.text()).isEqualTo(201);
        String caseId = opened.json().path("caseId").asText();
        JsonNode document = door.get("/v1/cases/" + caseId).json();
        assertThat(document.path("caseId").asText()).isEqualTo(caseId);
        assertThat(door.post("/v1/cases", SampleBodies.CASE).status()).isEqualTo(200);
        OpenDoor.Answer kept = door.post("/v1/records", "{\"caseId\":\"" + caseId + "\"}");
        assertThat(kept.status()).as(kept.text()).isEqualTo(201);
        assertThat(kept.json().path("caseId").asText()).isEqualTo(caseId);
        assertThat(problem(door.post("/v1/records", "{\"caseId\":\"nobody\"}"))).isEqualTo("404 not-held /caseId");
        assertThat(problem(door.get("/v1/cases/nobody"))).startsWith("404 not-held");
        assertThat(problem(door.get("/v1/records/1.2.3"))).startsWith("404 not-held");
    }

    @Test
    void aDraftStaysHere() throws Exception {
        sendFrames();
        OpenDoor.Answer kept = door.post("/v1/records", SampleBodies.DRAFT);
        assertThat(kept.status()).as(kept.text()).isEqualTo(201);
        assertThat(kept.json().path("state").asText()).isEqualTo("draft");
        String uid = kept.json().path("recordUid").asText();
        assertThat(door.send(door.request("/dicomweb/instances?SOPInstanceUID=" + uid)
                                .header("Accept", "application/dicom+json"))
                        .json())
                .isEmpty();
    }

    @Test
    void aProposalCannotBeSigned() throws Exception {
        sendFrames();
        String signed = SampleBodies.DRAFT.replaceFirst(
                "\\{", "{\"signature\":{\"name\":\"Sample^Signer\",\"time\":\"2026-01-05T10:15:00+01:00\"},");
        assertThat(problem(door.post("/v1/records", signed))).isEqualTo("422 missing-field /intent");
        assertThat(door.get("/v1/records").json().path("records")).isEmpty();
    }

    @Test
    void aRecordOfFramesThatAreNotHeldIsRefused() throws Exception {
        assertThat(problem(door.post("/v1/records", SampleBodies.CASE))).isEqualTo("404 not-held /frame");
        assertThat(door.rooms.holdsNothing()).isTrue();
        assertThat(door.postDicom("/v1/frames", SampleBodies.PLANNED_FRAME).status())
                .isEqualTo(201);
        assertThat(problem(door.post("/v1/records", SampleBodies.CASE)))
                .isEqualTo("404 not-held /observations/0/frame");
        assertThat(door.get("/v1/records").json().path("records")).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"plumbline-case/1\"|\"plumbline-case/9\"|400 unreadable-document /schema",
                "\"needle\":|\"neele\":|422 unknown-field /neele",
                "\"laterality\":\"[a-z]+\"|\"laterality\":\"bilateral\"|422 invalid-value /context/laterality",
                "\"frameNumber\":1|\"frameNumber\":7|422 frame-number-out-of-range /frame/frameNumber",
                "\"sopInstanceUid\":\"[0-9.]+\"|\"file\":\"frame.dcm\"|422 invalid-value /frame/file",
                "\"entryDistanceMm\":|\"angleToSkinDeg\":30,\"entryDistanceMm\":|422 contradictory-fields /intent",
                "\"target\":\\{\"column\":[0-9.]+|\"target\":{\"column\":NaN|422 invalid-value /marks/target/column",
                "\"target\":\\{\"column\":[0-9.]+|\"target\":{\"column\":99999|422 mark-outside-frame /marks/target",
                "\"block\":\"[A-Za-z]+\"|\"block\":\"elbow\"|422 invalid-value /context/block",
            })
    void refusesABadCaseAndKeepsNothing(String instead, String of, String problem) throws Exception {
        sendFrames();
        String bad = SampleBodies.CASE.replaceFirst(instead, of);
        assertThat(bad).isNotEqualTo(SampleBodies.CASE);
        assertThat(problem(door.post("/v1/records", bad))).isEqualTo(problem);
        assertThat(door.get("/v1/records").json().path("records")).isEmpty();
        assertThat(door.get("/dicomweb/instances").json()).hasSize(2);
    }

    @Test
    void refusesAMeasurementThatTheFrameDoesNotAllow() throws Exception {
        assertThat(door.postDicom("/v1/frames", UnfitFrames.withoutScale()).status())
                .isEqualTo(201);
        assertThat(door.postDicom("/v1/frames", UnfitFrames.dualView()).status())
                .isEqualTo(201);
        String dual = "{\"sopInstanceUid\":\"" + UnfitFrames.uid(2) + "\"}";
        String noScale = "{\"sopInstanceUid\":\"" + UnfitFrames.uid(1) + "\"}";
        assertThat(compared(UnfitFrames.caseOn(noScale, 150, 150, 40))).startsWith("422 frame-not-calibrated /frame");
        assertThat(compared(UnfitFrames.caseOn(dual, 150, 350, 40)))
                .isEqualTo("422 outside-measuring-region /marks/target");
        assertThat(compared(UnfitFrames.caseOn(dual, 5, 150, 40))).isEqualTo("422 target-unreachable /marks/target");
        assertThat(compared(UnfitFrames.caseWithCoincidentShaft(dual)))
                .isEqualTo("422 marks-coincide /observations/0/shaft");
        assertThat(door.post("/v1/comparisons", UnfitFrames.caseOn(dual, 150, 150, 40))
                        .status())
                .isEqualTo(200);
    }

    private String compared(String json) throws Exception {
        return problem(door.post("/v1/comparisons", json));
    }
}
