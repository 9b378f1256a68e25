// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.app;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.peer.PeerProcess;
import dev.plumbline.peer.ScheduledItem;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** From an item of DCMTK's worklist to the objects of the record, read by dcmdump: DICOM PS3.3 C.17.2, table 10-9. */
@Timeout(120)
class WorklistToRecordConformanceTest {
    @TempDir
    Path folder;

    private static JsonNode item(ServiceProcess service, String accession) throws Exception {
        ServiceProcess.Answer day = service.get("/v1/worklist?date=2026-01-05");
        assertThat(day.status()).as(day.text()).isEqualTo(200);
        for (JsonNode item : day.json().path("items")) {
            if (item.path("accessionNumber").asText().equals(accession)) {
                return item.path("order");
            }
        }
        throw new AssertionError(day.text());
    }

    private static String value(JsonNode instance, String tag) {
        return instance.path(tag).path("Value").path(0).asText();
    }

    private static String caseOf(String id, JsonNode order) {
        ObjectNode json = SampleWork.signed().put("caseId", id);
        json.set("order", order);
        return json.toString();
    }

    /** What dcmdump says of an object of the record. */
    private String dumped(ServiceProcess service, String uid) throws Exception {
        JsonNode found = service.get("/dicomweb/instances?SOPInstanceUID=" + uid, "application/dicom+json")
                .json()
                .path(0);
        ServiceProcess.Answer file = service.get(
                "/dicomweb/studies/" + value(found, "0020000D") + "/series/" + value(found, "0020000E") + "/instances/"
                        + uid,
                "multipart/related; type=\"application/dicom\"; transfer-syntax=*");
        byte[] body = file.body();
        Path path = folder.resolve(uid + ".dcm");
        String latin = new String(body, StandardCharsets.ISO_8859_1);
        int start = latin.indexOf("\r\n\r\n") + 4;
        int end = latin.lastIndexOf("\r\n--");
        Files.write(path, Arrays.copyOfRange(body, start, end));
        PeerProcess.Ended dump = PeerProcess.run(folder, List.of("dcmdump", "+L", path.toString()));
        assertThat(dump.code()).as(dump.said()).isZero();
        return dump.said();
    }

    @Test
    void carriesTheOrderIntoEveryObjectAndGivesItBack() throws Exception {
        int port = PeerProcess.freePort();
        ServiceProcess.Site site = ServiceProcess.Site.in(
                folder,
                ",\"peers\":[{\"name\":\"ris\",\"aeTitle\":\"WLSCP\",\"host\":\"127.0.0.1\",\"port\":" + port
                        + ",\"uses\":[\"worklist\"]}]");
        try (ServiceProcess service = ServiceProcess.start(site)) {
            assertThat(service.get("/v1/worklist").status()).as("nobody there").isEqualTo(503);
            SampleWork.frames(service);
            JsonNode frame = service.get(
                            "/dicomweb/instances?SOPInstanceUID=" + SampleWork.PLANNED_UID, "application/dicom+json")
                    .json()
                    .path(0);
            String study = value(frame, "0020000D");
            String patient = value(
                    service.get("/dicomweb/studies?StudyInstanceUID=" + study, "application/dicom+json")
                            .json()
                            .path(0),
                    "00100020");
            new ScheduledItem("1", "20260105", patient, study, "SAMPLE0001").schedule(folder);
            new ScheduledItem("2", "20260105", "INVENTED-OTHER", "2.25.4711", "ACC-2").schedule(folder);
            try (PeerProcess ris = PeerProcess.start(
                    folder,
                    port,
                    List.of(
                            "wlmscpfs",
                            "-dfp",
                            ScheduledItem.served(folder).toString(),
                            "-dfr",
                            Integer.toString(port)))) {
                assertThat(ris.port()).isEqualTo(port);
                agreeing(service, item(service, "SAMPLE0001"), study);
                differing(service, (ObjectNode) item(service, "ACC-2"), patient, study);
            }
        }
    }

    private void agreeing(ServiceProcess service, JsonNode order, String study) throws Exception {
        ServiceProcess.Answer kept = service.post("/v1/records", caseOf("ordered", order));
        assertThat(kept.status()).as(kept.text()).isEqualTo(201);
        String uid = kept.json().path("recordUid").asText();
        String report = dumped(service, uid);
        assertThat(report)
                .contains("(0040,a370) SQ")
                .contains("(0008,0050) SH [SAMPLE0001")
                .contains("(0040,1001) SH [RP-1")
                .contains("(0032,1060) LO [Axillary block")
                .contains("(0008,0090) PN [Invented^Referrer")
                .contains("(0020,000d) UI [" + study);
        for (JsonNode object : kept.json().path("objects")) {
            String said = dumped(service, object.asText());
            assertThat(said).contains("(0008,0050) SH [SAMPLE0001").contains("(0008,0090) PN [Invented^Referrer");
            if (!said.contains("(0008,0060) CS [SR]") && !said.contains("(0008,0060) CS [KO]")) {
                assertThat(said).contains("(0040,0275) SQ").contains("(0040,0009) SH [SPS-1");
            }
        }
        PeerProcess.Ended checked = PeerProcess.run(
                folder, List.of("dciodvfy", folder.resolve(uid + ".dcm").toString()));
        assertThat(checked.said()).doesNotContain("Error");
        ServiceProcess.Ended shown =
                ServiceProcess.run("show", folder.resolve(uid + ".dcm").toString(), "--json");
        assertThat(shown.code()).as(shown.err()).isZero();
        assertThat(new com.fasterxml.jackson.databind.ObjectMapper()
                        .readTree(shown.out())
                        .path("order"))
                .isEqualTo(order);
    }

    private void differing(ServiceProcess service, ObjectNode order, String patient, String study) throws Exception {
        for (String route : List.of("/v1/cases", "/v1/records")) {
            ServiceProcess.Answer refused = service.post(route, caseOf("mixed-up", order));
            assertThat(refused.status()).as(refused.text()).isEqualTo(409);
            assertThat(refused.json().path("type").asText()).isEqualTo("urn:plumbline:problem:order-mismatch");
            assertThat(refused.json().path("pointer").asText()).isEqualTo("/order");
            assertThat(refused.json().path("differs").toString())
                    .isEqualTo("[\"patientId\",\"studyInstanceUid\",\"accessionNumber\"]");
            assertThat(refused.text()).doesNotContain(patient, "INVENTED-OTHER");
        }
        assertThat(service.get("/v1/cases/mixed-up").status()).isEqualTo(404);
        order.putArray("resolved").add(resolved("patientId", "frame"));
        assertThat(service.post("/v1/records", caseOf("mixed-up", order))
                        .json()
                        .path("differs")
                        .toString())
                .isEqualTo("[\"studyInstanceUid\",\"accessionNumber\"]");
        order.withArray("resolved").add(resolved("studyInstanceUid", "frame"));
        order.withArray("resolved").add(resolved("accessionNumber", "order"));
        ServiceProcess.Answer kept = service.post("/v1/records", caseOf("mixed-up", order));
        assertThat(kept.status()).as(kept.text()).isEqualTo(201);
        String uid = kept.json().path("recordUid").asText();
        assertThat(dumped(service, uid))
                .contains("(0010,0020) LO [" + patient)
                .contains("(0020,000d) UI [" + study)
                .contains("(0020,000d) UI [2.25.4711")
                .contains("(0008,0050) SH [ACC-2");
        ServiceProcess.Ended shown =
                ServiceProcess.run("show", folder.resolve(uid + ".dcm").toString(), "--json");
        assertThat(new com.fasterxml.jackson.databind.ObjectMapper()
                        .readTree(shown.out())
                        .path("order"))
                .isEqualTo(order);

        order.withArray("resolved").removeAll().add(resolved("patientId", "order"));
        order.withArray("resolved").add(resolved("studyInstanceUid", "order"));
        order.withArray("resolved").add(resolved("accessionNumber", "order"));
        ServiceProcess.Answer moved = service.post("/v1/records", caseOf("moved", order));
        assertThat(moved.status()).as(moved.text()).isEqualTo(201);
        for (JsonNode object : moved.json().path("objects")) {
            assertThat(dumped(service, object.asText()))
                    .contains("(0010,0020) LO [INVENTED-OTHER")
                    .contains("(0010,0010) PN [Invented^Person")
                    .contains("(0020,000d) UI [2.25.4711");
        }
        ObjectNode side = order.deepCopy().put("laterality", "left");
        assertThat(service.post("/v1/cases", caseOf("side", side))
                        .json()
                        .path("differs")
                        .toString())
                .isEqualTo("[\"laterality\"]");
    }

    private static ObjectNode resolved(String item, String take) {
        return com.fasterxml.jackson.databind.node.JsonNodeFactory.instance
                .objectNode()
                .put("item", item)
                .put("take", take)
                .put("by", "Doe^Jo")
                .put("reason", "asked the ward");
    }
}
