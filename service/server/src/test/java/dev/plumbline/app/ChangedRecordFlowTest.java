// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.app;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.dicom.DicomFile;
import dev.plumbline.dicom.Tag;
import dev.plumbline.peer.PeerProcess;
import dev.plumbline.peer.QueryRetrievePeer;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** An amendment and the note of a withdrawal go the way of the record that they are about, after it, and are proved too. */
@Timeout(180)
class ChangedRecordFlowTest {
    @TempDir
    Path folder;

    private static JsonNode posted(ServiceProcess service, String path, String body) throws Exception {
        ServiceProcess.Answer answer = service.post(path, body);
        assertThat(answer.status()).as(answer.text()).isEqualTo(201);
        return answer.json();
    }

    private static List<String> objects(JsonNode record) {
        List<String> uids = new ArrayList<>();
        record.path("objects").forEach(uid -> uids.add(uid.asText()));
        return uids;
    }

    private static String amendment(String caseId) {
        ObjectNode corrected = SampleWork.signed().put("caseId", caseId);
        corrected.withObjectProperty("intent").put("entryDistanceMm", 44);
        corrected.withObjectProperty("signature").put("time", "2026-01-05T12:15:00+01:00");
        return JsonNodeFactory.instance
                .objectNode()
                .put("reason", "read off wrongly")
                .set("case", corrected)
                .toString();
    }

    @Test
    void allOfItsLifeComesToTheArchiveInItsOrder() throws Exception {
        int port = PeerProcess.freePort();
        ServiceProcess.Site site = ServiceProcess.Site.in(
                folder,
                ",\"peers\":[{\"name\":\"pacs\",\"aeTitle\":\"" + QueryRetrievePeer.AE_TITLE
                        + "\",\"host\":\"127.0.0.1\",\"port\":" + port + ",\"uses\":[\"archive\"]}]");
        List<String> all = new ArrayList<>();
        String first;
        String amended;
        String note;
        try (ServiceProcess service = ServiceProcess.start(site)) { // nobody listens at the archive's port yet
            SampleWork.frames(service);
            JsonNode signed = posted(service, "/v1/records", SampleWork.signed("changed"));
            first = signed.path("recordUid").asText();
            JsonNode second = posted(service, "/v1/records/" + first + "/amend", amendment("changed"));
            amended = second.path("recordUid").asText();
            JsonNode third = posted(
                    service,
                    "/v1/records/" + amended + "/withdraw",
                    "{\"reason\":\"wrongPatientOrSide\",\"text\":\"the left side was meant\",\"by\":\"Sample^Head\"}");
            List.of(signed, second).forEach(record -> all.addAll(objects(record)));
            JsonNode queue = service.get("/v1/dispatch").json();
            assertThat(queue.path("counts").path("queued").asInt()).isEqualTo(3);
            note = queue.at("/dispatches/0/recordUid").asText();
            assertThat(third.toString()).contains(note);
            all.add(note);
        }
        try (QueryRetrievePeer archive = QueryRetrievePeer.start(folder, port);
                ServiceProcess service = ServiceProcess.start(site)) {
            JsonNode counts = service.awaitProved(3, Duration.ofSeconds(60));
            assertThat(counts.path("proved").asInt()).as(counts.toString()).isEqualTo(3);
            PeerArchive theirs = PeerArchive.in(archive.store());
            PeerArchive ours = PeerArchive.in(site.data().resolve("objects"));
            assertThat(theirs.files().keySet()).containsExactlyInAnyOrderElementsOf(all);
            for (String uid : all) {
                assertThat(theirs.complaint(uid, ours)).isEmpty();
            }
            DicomFile withdrawal = DicomFile.open(theirs.files().get(note).get(0));
            assertThat(withdrawal.sopClassUid()).isEqualTo("1.2.840.10008.5.1.4.1.1.88.59");
            DicomFile replaced = DicomFile.open(theirs.files().get(amended).get(0));
            assertThat(replaced.header().items(Tag.PREDECESSOR_DOCUMENTS_SEQUENCE))
                    .hasSize(1);
            requireOrder(service, List.of(first, amended, note));
        }
    }

    /** Nothing of a revision was sent before all of the one before it was. */
    private static void requireOrder(ServiceProcess service, List<String> reports) throws Exception {
        List<JsonNode> dispatches = new ArrayList<>();
        service.get("/v1/dispatch").json().path("dispatches").forEach(dispatches::add);
        dispatches.sort(Comparator.comparingInt(dispatch -> dispatch.path("id").asInt()));
        assertThat(dispatches)
                .extracting(dispatch -> dispatch.path("recordUid").asText())
                .isEqualTo(reports);
        assertThat(dispatches)
                .allMatch(dispatch -> dispatch.path("reason").asText().equals("Read back and equal."));
    }
}
