// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.archive.Archive;
import dev.plumbline.archive.DataFolder;
import dev.plumbline.archive.Dispatch;
import dev.plumbline.archive.Inspection;
import dev.plumbline.archive.LowWater;
import dev.plumbline.archive.Outbound;
import dev.plumbline.archive.RecordIndex;
import dev.plumbline.archive.RecordList;
import dev.plumbline.archive.RecordQuery;
import dev.plumbline.archive.RecordTable;
import dev.plumbline.archive.SqliteStore;
import dev.plumbline.dicom.DataSet;
import dev.plumbline.dicom.DicomFile;
import dev.plumbline.dicom.ObjectCheck;
import dev.plumbline.dicom.SampleCases;
import dev.plumbline.dicom.SampleObjects;
import dev.plumbline.dicom.Tag;
import dev.plumbline.document.CaseJson;
import dev.plumbline.samples.SampleSet;
import java.net.http.HttpRequest;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A record from draft to withdrawal, and records found again, through a real socket. */
class RecordLifeFlowTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final String SIGNATURE =
            "{\"signature\":{\"name\":\"Sample^Signer\",\"time\":\"2026-01-05T10:45:00+01:00\"}}";
    private static final String WITHDRAWAL =
            "{\"reason\":\"wrongPatientOrSide\",\"text\":\"the other side was meant\",\"by\":\"Sample^Head\"}";

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

    private static ObjectNode sample() throws Exception {
        return (ObjectNode) JSON.readTree(SampleBodies.CASE);
    }

    /** The sample case before anybody signs it. */
    private static ObjectNode unsigned() throws Exception {
        ObjectNode json = sample();
        json.remove("signature");
        return json;
    }

    private String draft() throws Exception {
        OpenDoor.Answer kept = door.post("/v1/records", unsigned().toString());
        assertThat(kept.status()).as(kept.text()).isEqualTo(201);
        assertThat(kept.json().path("state").asText()).isEqualTo("draft");
        return kept.json().path("recordUid").asText();
    }

    private String signed() throws Exception {
        OpenDoor.Answer kept = door.post("/v1/records", SampleBodies.CASE);
        assertThat(kept.status()).as(kept.text()).isEqualTo(201);
        return kept.json().path("recordUid").asText();
    }

    private static String amendment(String reason, double entryDistanceMm) throws Exception {
        ObjectNode json = sample();
        ((ObjectNode) json.get("intent")).put("entryDistanceMm", entryDistanceMm);
        ((ObjectNode) json.get("signature")).put("time", "2026-01-05T11:30:00+01:00");
        ObjectNode body = JSON.createObjectNode().put("reason", reason);
        body.set("case", json);
        return body.toString();
    }

    private OpenDoor.Answer step(String uid, String what, String body) throws Exception {
        return door.post("/v1/records/" + uid + "/" + what, body);
    }

    private static String problem(OpenDoor.Answer answer) throws Exception {
        assertThat(answer.json().path("remedy").asText()).isNotBlank();
        return answer.status() + " "
                + answer.json().path("type").asText().replace("urn:plumbline:problem:", "") + " "
                + answer.json().path("pointer").asText();
    }

    private JsonNode record(String uid) throws Exception {
        return door.get("/v1/records/" + uid).json();
    }

    private DicomFile dicom(String uid) throws Exception {
        OpenDoor.Answer answer = door.send(door.request("/v1/records/" + uid).header("Accept", "application/dicom"));
        assertThat(answer.status()).isEqualTo(200);
        Path file = Files.createTempFile("record", ".dcm");
        Files.write(file, answer.response().body());
        return DicomFile.open(file);
    }

    private static String flags(DataSet report) {
        return report.string(Tag.COMPLETION_FLAG).orElse("-") + " "
                + report.string(Tag.VERIFICATION_FLAG).orElse("-") + " "
                + report.string(Tag.PRELIMINARY_FLAG).orElse("-");
    }

    private static void conforms(DicomFile object) {
        ObjectCheck.Result result = ObjectCheck.check(object.header());
        assertThat(result.report().lines()).as(result.kind()).isEmpty();
    }

    @Test
    void aRecordIsDraftedSignedAmendedAndWithdrawnAndNothingIsOverwritten() throws Exception {
        String draft = draft();
        byte[] draftBytes = Files.readAllBytes(dicom(draft).path());
        assertThat(flags(dicom(draft).header())).isEqualTo("PARTIAL UNVERIFIED PRELIMINARY");

        OpenDoor.Answer signing = step(draft, "sign", SIGNATURE);
        assertThat(signing.status()).as(signing.text()).isEqualTo(201);
        String signed = signing.json().path("recordUid").asText();
        assertThat(signing.header("Location")).isEqualTo("/v1/records/" + signed);
        DataSet report = dicom(signed).header();
        byte[] signedBytes = Files.readAllBytes(dicom(signed).path());
        assertThat(flags(report)).isEqualTo("COMPLETE VERIFIED FINAL");
        assertThat(report.items(Tag.PREDECESSOR_DOCUMENTS_SEQUENCE)).isEmpty();
        assertThat(report.string(Tag.SERIES_DATE))
                .isEqualTo(dicom(draft).header().string(Tag.SERIES_DATE));
        assertThat(record(draft).path("successor").asText()).isEqualTo(signed);
        assertThat(record(signed).path("draft").asText()).isEqualTo(draft);

        OpenDoor.Answer amending = step(signed, "amend", amendment("entry was read off wrongly", 44));
        assertThat(amending.status()).as(amending.text()).isEqualTo(201);
        String amended = amending.json().path("recordUid").asText();
        assertThat(amending.json().path("state").asText()).isEqualTo("amended");
        assertThat(record(amended).path("predecessor").asText()).isEqualTo(signed);
        assertThat(record(amended).path("amendment").path("changed").asText())
                .isEqualTo("intent entryDistanceMm: 44 instead of 45");
        assertThat(record(signed).path("successor").asText()).isEqualTo(amended);
        assertThat(record(signed).path("current").booleanValue()).isFalse();
        assertThat(record(amended).path("current").booleanValue()).isTrue();
        DicomFile amendedFile = dicom(amended);
        DataSet predecessor = amendedFile
                .header()
                .items(Tag.PREDECESSOR_DOCUMENTS_SEQUENCE)
                .get(0)
                .items(Tag.REFERENCED_SERIES_SEQUENCE)
                .get(0)
                .items(Tag.REFERENCED_SOP_SEQUENCE)
                .get(0);
        assertThat(predecessor.string(Tag.REFERENCED_SOP_INSTANCE_UID)).contains(signed);
        assertThat(amendedFile.header().string(Tag.SERIES_INSTANCE_UID))
                .isEqualTo(report.string(Tag.SERIES_INSTANCE_UID));
        assertThat(amendedFile.header().string(Tag.SERIES_TIME)).isEqualTo(report.string(Tag.SERIES_TIME));
        conforms(amendedFile);
        assertThat(door.send(door.request("/v1/records/" + amended).header("Accept", "text/plain"))
                        .text())
                .contains("entry was read off wrongly")
                .contains("44 instead of 45");

        OpenDoor.Answer withdrawing = step(amended, "withdraw", WITHDRAWAL);
        assertThat(withdrawing.status()).as(withdrawing.text()).isEqualTo(201);
        String note = withdrawing.json().path("recordUid").asText();
        conforms(dicom(note));
        for (String uid : List.of(signed, amended)) {
            JsonNode withdrawn = record(uid);
            assertThat(withdrawn.path("state").asText()).isEqualTo("withdrawn");
            assertThat(withdrawn.path("withdrawal").asText()).isEqualTo(note);
            assertThat(withdrawn.path("withdrawn").path("reason").asText()).isEqualTo("wrongPatientOrSide");
            assertThat(withdrawn.path("current").booleanValue()).isFalse();
        }
        assertThat(record(note).path("predecessor").asText()).isEqualTo(amended);
        List<String> named = new ArrayList<>();
        DataSet noteHeader = dicom(note).header();
        noteHeader
                .items(Tag.CURRENT_REQUESTED_PROCEDURE_EVIDENCE_SEQUENCE)
                .forEach(study -> study.items(Tag.REFERENCED_SERIES_SEQUENCE)
                        .forEach(series -> series.items(Tag.REFERENCED_SOP_SEQUENCE)
                                .forEach(item -> named.add(item.string(Tag.REFERENCED_SOP_INSTANCE_UID)
                                        .orElseThrow()))));
        assertThat(named).containsExactlyInAnyOrderElementsOf(objects(signed, amended));

        assertThat(Files.readAllBytes(dicom(draft).path())).isEqualTo(draftBytes);
        assertThat(Files.readAllBytes(dicom(signed).path())).isEqualTo(signedBytes);
        assertThat(door.get("/dicomweb/instances?SOPInstanceUID=" + note).json())
                .hasSize(1);
    }

    private List<String> objects(String... uids) throws Exception {
        List<String> objects = new ArrayList<>();
        for (String uid : uids) {
            record(uid).path("objects").forEach(object -> objects.add(object.asText()));
        }
        return objects;
    }

    @Test
    void everyStepAgainIsHarmlessAndAnotherContentIsRefused() throws Exception {
        String draft = draft();
        OpenDoor.Answer first = step(draft, "sign", SIGNATURE);
        assertThat(first.status()).as(first.text()).isEqualTo(201);
        OpenDoor.Answer again = step(draft, "sign", SIGNATURE);
        assertThat(again.status()).as(again.text()).isEqualTo(200);
        assertThat(again.json()).isEqualTo(first.json());
        assertThat(step(draft, "sign", "{\"signature\":{\"name\":\"Sample^Signer\"}}")
                        .status())
                .isEqualTo(200);
        assertThat(problem(step(draft, "sign", SIGNATURE.replace("Signer", "Other"))))
                .isEqualTo("409 conflict ");
        String signed = first.json().path("recordUid").asText();
        assertThat(step(signed, "sign", SIGNATURE).status()).isEqualTo(200);
        assertThat(problem(step(signed, "sign", SIGNATURE.replace("Signer", "Other"))))
                .isEqualTo("409 conflict ");

        OpenDoor.Answer amended = step(signed, "amend", amendment("a", 44));
        assertThat(step(signed, "amend", amendment("a", 44)).status()).isEqualTo(200);
        assertThat(problem(step(signed, "amend", amendment("b", 43)))).isEqualTo("409 conflict ");
        assertThat(problem(step(signed, "withdraw", WITHDRAWAL))).isEqualTo("409 conflict ");
        String second = amended.json().path("recordUid").asText();
        assertThat(step(second, "amend", amendment("b", 43)).status()).isEqualTo(201);
        assertThat(door.get("/v1/records").json().path("total").intValue()).isEqualTo(4);
    }

    @Test
    void aKeyGivesTheSameAnswerAgainAndATagThatIsOldIsRefused() throws Exception {
        String signed = signed();
        String path = "/v1/records/" + signed + "/withdraw";
        String tag = door.get("/v1/records/" + signed).header("ETag");
        assertThat(tag).startsWith("\"");
        HttpRequest.Builder wrong = request(path, "If-Match", "\"somethingelse\"");
        assertThat(problem(door.send(wrong))).isEqualTo("412 precondition-failed ");
        assertThat(record(signed).path("state").asText()).isEqualTo("signed");
        OpenDoor.Answer done = door.send(request(path, "If-Match", tag).header("Idempotency-Key", "w-1"));
        assertThat(done.status()).as(done.text()).isEqualTo(201);
        OpenDoor.Answer again = door.send(request(path, "Idempotency-Key", "w-1"));
        assertThat(again.status()).isEqualTo(201);
        assertThat(again.text()).isEqualTo(done.text());
        assertThat(door.get("/v1/records/" + signed).header("ETag")).isNotEqualTo(tag);
    }

    private HttpRequest.Builder request(String path, String header, String value) {
        return door.request(path)
                .header("Content-Type", "application/json")
                .header(header, value)
                .POST(HttpRequest.BodyPublishers.ofString(WITHDRAWAL));
    }

    @Test
    void whatIsMissingBlocksSigningUnlessAReasonIsGiven() throws Exception {
        ObjectNode kept = unsigned().put("caseId", "kept-1");
        kept.putArray("events")
                .addObject()
                .put("id", "e-1")
                .put("kind", "needleOut")
                .put("happenedAt", "2026-01-05T10:10:00+01:00")
                .put("enteredAt", "2026-01-05T10:10:00+01:00")
                .put("enteredBy", "Sample^Assistant");
        OpenDoor.Answer drafted = door.post("/v1/records", kept.toString());
        assertThat(drafted.status()).as(drafted.text()).isEqualTo(201);
        String draft = drafted.json().path("recordUid").asText();
        OpenDoor.Answer refused = step(draft, "sign", SIGNATURE);
        assertThat(refused.json().path("type").asText()).isEqualTo("urn:plumbline:problem:incomplete");
        assertThat(record(draft).path("successor").isNull()).isTrue();
        ObjectNode body = (ObjectNode) JSON.readTree(SIGNATURE);
        ObjectNode reasons = ((ObjectNode) body.get("signature")).putObject("incompleteBecause");
        refused.json()
                .path("missing")
                .forEach(item -> reasons.put(item.path("item").asText(), "not asked"));
        assertThat(reasons).isNotEmpty();
        OpenDoor.Answer signed = step(draft, "sign", body.toString());
        assertThat(signed.status()).as(signed.text()).isEqualTo(201);
        assertThat(problem(door.post(
                        "/v1/cases/kept-1/team", "{\"id\":\"t-1\",\"name\":\"Late^Comer\",\"role\":\"assistant\"}")))
                .isEqualTo("409 conflict ");
    }

    @Test
    void aDraftThatTheCaseHasLeftBehindIsNotSigned() throws Exception {
        door.post("/v1/cases", unsigned().put("caseId", "going-on").toString());
        String draft = door.post("/v1/records", "{\"caseId\":\"going-on\"}")
                .json()
                .path("recordUid")
                .asText();
        assertThat(door.post(
                                "/v1/cases/going-on/team",
                                "{\"id\":\"t-1\",\"name\":\"Sample^Assistant\",\"role\":\"assistant\"}")
                        .status())
                .isEqualTo(201);
        assertThat(problem(step(draft, "sign", SIGNATURE))).isEqualTo("409 conflict ");
        String next = door.post("/v1/records", "{\"caseId\":\"going-on\"}")
                .json()
                .path("recordUid")
                .asText();
        assertThat(next).isNotEqualTo(draft);
        assertThat(problem(step(draft, "sign", SIGNATURE))).isEqualTo("409 conflict ");
        assertThat(step(next, "sign", SIGNATURE).status()).isEqualTo(201);
        assertThat(record(draft).path("successor").asText()).isEqualTo(next);
    }

    @Test
    void refusesWhatCannotBeAndWritesNothing() throws Exception {
        String draft = draft();
        assertThat(problem(step(draft, "sign", "{}"))).isEqualTo("422 missing-field /signature");
        assertThat(problem(step(draft, "sign", "{\"signature\":{}}"))).isEqualTo("422 missing-field /signature/name");
        assertThat(problem(step(draft, "amend", amendment("r", 44)))).isEqualTo("409 conflict ");
        assertThat(problem(step(draft, "withdraw", WITHDRAWAL))).isEqualTo("409 conflict ");
        for (String what : List.of("sign", "amend", "withdraw")) {
            assertThat(problem(step("1.2.3", what, SIGNATURE))).isEqualTo("404 not-held ");
        }
        String signed = step(draft, "sign", SIGNATURE).json().path("recordUid").asText();
        ObjectNode bad = (ObjectNode) JSON.readTree(amendment("r", 44));
        ObjectNode without = bad.deepCopy();
        without.remove("reason");
        assertThat(problem(step(signed, "amend", without.toString()))).isEqualTo("422 missing-field /reason");
        ObjectNode unsigned = bad.deepCopy();
        ((ObjectNode) unsigned.get("case")).remove("signature");
        assertThat(problem(step(signed, "amend", unsigned.toString()))).isEqualTo("422 missing-field /case/signature");
        ObjectNode observer = bad.deepCopy();
        ((ObjectNode) observer.get("case").get("signature")).remove("name");
        assertThat(problem(step(signed, "amend", observer.toString())))
                .isEqualTo("422 missing-field /case/signature/name");
        ObjectNode side = bad.deepCopy();
        ((ObjectNode) side.get("case").get("context")).put("laterality", "upper");
        assertThat(problem(step(signed, "amend", side.toString())))
                .isEqualTo("422 invalid-value /case/context/laterality");
        ObjectNode other = bad.deepCopy();
        ((ObjectNode) other.get("case")).put("caseId", "another");
        assertThat(problem(step(signed, "amend", other.toString()))).isEqualTo("422 invalid-value /case/caseId");
        assertThat(problem(step(signed, "amend", amendment("nothing", 45)))).isEqualTo("422 invalid-value /case");
        ObjectNode early = bad.deepCopy();
        ((ObjectNode) early.get("case").get("signature")).put("time", "2026-01-05T09:00:00+01:00");
        assertThat(problem(step(signed, "amend", early.toString())))
                .isEqualTo("422 invalid-value /case/signature/time");
        assertThat(problem(step(signed, "withdraw", WITHDRAWAL.replace("wrongPatientOrSide", "nomood"))))
                .isEqualTo("422 invalid-value /reason");
        assertThat(problem(step(signed, "withdraw", "{\"reason\":\"other\",\"text\":\"x\"}")))
                .isEqualTo("422 missing-field /by");
        assertThat(record(signed).path("successor").isNull()).isTrue();
        int held = door.get("/dicomweb/instances").json().size();
        assertThat(step(signed, "withdraw", WITHDRAWAL).status()).isEqualTo(201);
        assertThat(problem(step(signed, "withdraw", WITHDRAWAL))).isEqualTo("409 conflict ");
        assertThat(problem(step(signed, "amend", amendment("r", 44)))).isEqualTo("409 conflict ");
        assertThat(door.get("/dicomweb/instances").json()).hasSize(held + 1);
    }

    /** The planned frame's UID with another last digit. */
    private static String other(char last) {
        String uid = SampleBodies.PLANNED_UID;
        return uid.substring(0, uid.length() - 1) + (uid.charAt(uid.length() - 1) == last ? '7' : last);
    }

    /** The planned frame under another UID, of another patient or in another study, all lengths kept. */
    private static byte[] foreign(String uid, String what) throws Exception {
        Path file = Files.write(Files.createTempFile("frame", ".dcm"), SampleBodies.PLANNED_FRAME);
        DataSet header = DicomFile.open(file).header();
        int tag = what.equals("patient") ? Tag.PATIENT_ID : Tag.STUDY_INSTANCE_UID;
        String said = header.string(tag).orElseThrow();
        String changed = said.substring(0, said.length() - 1) + (said.endsWith("3") ? '4' : '3');
        return new String(SampleBodies.PLANNED_FRAME, ISO_8859_1)
                .replace(SampleBodies.PLANNED_UID, uid)
                .replace(said, changed)
                .getBytes(ISO_8859_1);
    }

    /** A frame of somebody else, or of another study, in an amendment: refused by name, nothing kept. */
    @Test
    void anAmendmentStaysWithThePatientAndTheStudy() throws Exception {
        String signed = signed();
        for (String[] each : new String[][] {{other('8'), "patient"}, {other('9'), "study"}}) {
            assertThat(door.postDicom("/v1/frames", foreign(each[0], each[1])).status())
                    .isEqualTo(201);
            ObjectNode body = (ObjectNode) JSON.readTree(amendment("other frame", 44));
            ((ObjectNode) body.get("case").get("frame")).put("sopInstanceUid", each[0]);
            OpenDoor.Answer answer = step(signed, "amend", body.toString());
            assertThat(problem(answer)).isEqualTo("422 invalid-value /case/frame");
            assertThat(answer.json().path("detail").asText()).contains(each[1]);
        }
        assertThat(record(signed).path("successor").isNull()).isTrue();
    }

    @ParameterizedTest
    @CsvSource({
        "patient=SAMPLE-NOBODY,0",
        "from=2026-01-05&to=2026-01-05,2",
        "from=2026-01-06,0",
        "to=2026-01-04,0",
        "laterality=left,0",
        "state=signed,1",
        "state=draft,0",
        "state=amended,1",
        "state=withdrawn,0",
        "current=true,1",
        "differs=true,2",
        "differs=false,0",
        "block=noSuchBlock,0",
        "operator=nobody,0",
    })
    void recordsAreFoundByWhatTheySay(String query, int found) throws Exception {
        step(signed(), "amend", amendment("a", 44));
        JsonNode list = door.get("/v1/records?" + query).json();
        assertThat(list.path("records")).as(list.toString()).hasSize(found);
        assertThat(list.path("total").intValue()).isEqualTo(found);
    }

    @Test
    void aFilterFindsWhatARowSaysAndAnUnknownOneIsRefused() throws Exception {
        signed();
        JsonNode row = door.get("/v1/records").json().path("records").get(0);
        for (String[] each : new String[][] {
            {"patient", "patientId"}, {"block", "block"}, {"operator", "operator"}, {"laterality", "laterality"}
        }) {
            String value = row.path(each[1]).asText();
            assertThat(value).as(each[1]).isNotBlank();
            String query = "/v1/records?" + each[0] + "="
                    + java.net.URLEncoder.encode(value, java.nio.charset.StandardCharsets.UTF_8);
            assertThat(door.get(query).json().path("records")).as(query).hasSize(1);
        }
        assertThat(row.path("differs").booleanValue()).isTrue();
        assertThat(row.path("differsIn").get(0).asText()).isEqualTo("obs-1 angleToSkinDeg");
        assertThat(row.path("differenceAngleToSkinDeg").doubleValue()).isBetween(4.0, 5.0);
        assertThat(problem(door.get("/v1/records?patiend=1"))).isEqualTo("422 invalid-value ");
        assertThat(problem(door.get("/v1/records?from=yesterday"))).isEqualTo("422 invalid-value ");
        assertThat(problem(door.get("/v1/records?laterality=both"))).isEqualTo("422 invalid-value ");
        assertThat(problem(door.get("/v1/records?state=done"))).isEqualTo("422 invalid-value ");
        assertThat(problem(door.get("/v1/records?limit=-1"))).isEqualTo("422 invalid-value ");
    }

    @Test
    void theListIsATableForWhoAsks() throws Exception {
        ObjectNode formula = sample().put("caseId", "formula");
        ((ObjectNode) formula.get("context")).putObject("operator").put("name", "=1+1,\"x\"");
        OpenDoor.Answer kept = door.post("/v1/records", formula.toString());
        assertThat(kept.status()).as(kept.text()).isEqualTo(201);
        OpenDoor.Answer table = door.send(door.request("/v1/records").header("Accept", "text/csv"));
        assertThat(table.type()).startsWith("text/csv");
        String[] lines = table.text().split("\r\n");
        assertThat(lines).hasSize(2);
        assertThat(lines[0]).isEqualTo(String.join(",", RecordTable.COLUMNS));
        assertThat(lines[1]).contains("\"'=1+1,\"\"x\"\"\"").contains(",true,");
        JsonNode row = door.get("/v1/records").json().path("records").get(0);
        assertThat(RecordTable.COLUMNS).allMatch(row::has);
        String dictionary = Files.readString(Path.of("..", "..", "docs", "records.md"));
        assertThat(RecordTable.COLUMNS).allMatch(column -> dictionary.contains("`" + column + "`"));
    }

    /** Database thrown away: from the files alone the same list, the same chains. */
    @Test
    void theIndexIsMadeAgainFromTheFilesAlone() throws Exception {
        String first = signed();
        String amended = step(first, "amend", amendment("a", 44))
                .json()
                .path("recordUid")
                .asText();
        SampleSet set = new SampleSet(1);
        SampleObjects objects = new SampleObjects(set);
        door.postDicom("/v1/frames", objects.file(set.outOfPlanePlan()));
        door.postDicom("/v1/frames", objects.file(set.outOfPlaneNeedle()));
        String second = door.post(
                        "/v1/records",
                        CaseJson.write(SampleCases.held(set).outOfPlane()).toString())
                .json()
                .path("recordUid")
                .asText();
        assertThat(step(second, "withdraw", WITHDRAWAL).status()).isEqualTo(201);
        JsonNode before = door.get("/v1/records").json();
        assertThat(before.path("records")).hasSize(3);
        Path data = door.rooms.data;
        door.close();
        for (String suffix : List.of("", "-wal", "-shm")) {
            Files.deleteIfExists(data.resolve("store.sqlite" + suffix));
        }
        try (DataFolder folder = DataFolder.open(data);
                SqliteStore store = SqliteStore.open(folder.database())) {
            assertThat(new Inspection(folder, store).reindex().damages()).isEmpty();
            RecordIndex index = new RecordIndex(
                    new Archive(folder, store, new LowWater(0, 0), new Outbound(List.of("pacs"), () -> {})));
            RecordIndex.Rebuilt rebuilt = index.rebuild(ServiceRooms.CLOCK.instant());
            assertThat(rebuilt.damages()).isEmpty();
            assertThat(rebuilt.added()).isEqualTo(4);
            assertThat(store.dispatches().waiting("pacs", Dispatch.State.QUEUED))
                    .as("nothing tells which of them had arrived")
                    .hasSize(4);
            assertThat(index.rebuild(ServiceRooms.CLOCK.instant()).added()).isZero();
            RecordQuery all = RecordQuery.of(Map.of(), 100, 100);
            JsonNode after = JSON.readTree(new RecordList(store, all).json().toString());
            assertThat(after).isEqualTo(before);
            assertThat(store.revisionOfReport(amended)
                            .orElseThrow()
                            .change()
                            .orElseThrow()
                            .words())
                    .isEqualTo("intent entryDistanceMm: 44 instead of 45");
        }
        door = new OpenDoor();
    }
}
