// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.app;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.archive.Archive;
import dev.plumbline.archive.Cases;
import dev.plumbline.archive.DataFolder;
import dev.plumbline.archive.LowWater;
import dev.plumbline.archive.RecordList;
import dev.plumbline.archive.Records;
import dev.plumbline.archive.SqliteStore;
import dev.plumbline.config.BedsideFiles;
import dev.plumbline.dicom.Installation;
import dev.plumbline.dicom.RecordComposer;
import dev.plumbline.dicom.SampleCases;
import dev.plumbline.dicom.SampleObjects;
import dev.plumbline.document.CaseJson;
import dev.plumbline.document.Door;
import dev.plumbline.procedure.SightDetail;
import dev.plumbline.samples.SampleSet;
import java.io.ByteArrayInputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Records from draft to withdrawal, found and indexed again on the command line, in a folder that no service uses. */
class LifeCommandsFlowTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-01-05T09:30:00Z"), ZoneOffset.ofHours(1));

    @TempDir
    private Path folder;

    private Path config;
    private String draft = "";
    private ObjectNode document;

    private record Done(int code, String out, String err) {}

    private Done plumbline(String... arguments) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        String[] all = new String[arguments.length + 2];
        System.arraycopy(arguments, 0, all, 0, arguments.length);
        all[arguments.length] = "--config";
        all[arguments.length + 1] = config.toString();
        int code = Main.plumbline(new PrintWriter(out), new PrintWriter(err)).run(all);
        return new Done(code, out.toString(), err.toString());
    }

    /** A folder with the frames and the draft of the in-plane sample case; port 1 answers nobody. */
    @BeforeEach
    void keepADraft() throws Exception {
        config = Files.writeString(
                folder.resolve("service.json"),
                "{\"schema\":\"plumbline-service/1\",\"port\":1,\"dataFolder\":\"data\"}");
        SampleSet set = new SampleSet(1);
        SampleObjects objects = new SampleObjects(set);
        document = CaseJson.write(SampleCases.held(set).inPlane());
        ObjectNode unsigned = document.deepCopy();
        unsigned.remove("signature");
        Installation installation =
                new Installation("2.25.12345", "test", "Plumbline", "1", "0.0-test", "", "GB", SightDetail.SUMMARY);
        try (DataFolder data = DataFolder.open(folder.resolve("data"));
                SqliteStore store = SqliteStore.open(data.database())) {
            Archive archive = new Archive(data, store, new LowWater(0, 0));
            archive.receiveFrames(new ByteArrayInputStream(objects.file(set.inPlanePlan())));
            archive.receiveFrames(new ByteArrayInputStream(objects.file(set.inPlaneNeedle())));
            Cases cases = new Cases(archive, BedsideFiles.shipped(), CLOCK);
            Records records = new Records(archive, new RecordComposer(installation), cases, CLOCK);
            String kept = records.file(
                            CaseJson.read(unsigned, Door.HTTP),
                            Optional.empty(),
                            standing -> RecordList.named(standing).toString())
                    .body();
            draft = JSON.readTree(kept).path("recordUid").asText();
        }
    }

    private String uid(Done done) throws Exception {
        assertThat(done.code()).as(done.err()).isZero();
        return JSON.readTree(done.out()).path("recordUid").asText();
    }

    @Test
    void aRecordLivesOnTheCommandLine() throws Exception {
        String signed =
                uid(plumbline("sign", draft, "--by", "Sample^Signer", "--time", "2026-01-05T10:45:00+01:00", "--json"));
        assertThat(plumbline("sign", draft, "--by", "Other^Signer").code()).isEqualTo(2);
        ((ObjectNode) document.get("intent")).put("entryDistanceMm", 44);
        ((ObjectNode) document.get("signature")).put("time", "2026-01-05T11:45:00+01:00");
        Path corrected = Files.writeString(folder.resolve("corrected.json"), document.toString());
        String amended = uid(
                plumbline("amend", signed, "--case", corrected.toString(), "--reason", "read off wrongly", "--json"));
        Done listed = plumbline("records", "--differs");
        assertThat(listed.code()).as(listed.err()).isZero();
        assertThat(listed.out()).contains(signed, amended, "obs-1 angleToSkinDeg", "3 records.");
        assertThat(plumbline("records", "--csv", "--state", "amended").out().split("\r\n"))
                .hasSize(2);
        Done withdrawn = plumbline(
                "withdraw", amended, "--reason", "wrongPatientOrSide", "--text", "other side", "--by", "Sample^Head");
        assertThat(withdrawn.code()).as(withdrawn.err()).isZero();
        Done again = plumbline("withdraw", amended, "--reason", "other", "--text", "again", "--by", "Sample^Head");
        assertThat(again.code()).isEqualTo(2);
        assertThat(again.err()).contains("withdrawn");
        JsonNode before = signedRecords();
        assertThat(before).hasSize(2).allMatch(row -> row.path("state").asText().equals("withdrawn"));
        for (String suffix : List.of("", "-wal", "-shm")) {
            Files.deleteIfExists(folder.resolve("data/store.sqlite" + suffix));
        }
        Done reindexed = plumbline("reindex");
        assertThat(reindexed.code()).as(reindexed.out()).isZero();
        assertThat(reindexed.out()).contains("3 records and withdrawals were read from their files.");
        assertThat(signedRecords()).isEqualTo(before);
    }

    /** Without the draft, which stands in no file. */
    private JsonNode signedRecords() throws Exception {
        Done listed = plumbline("records", "--json", "--state", "withdrawn");
        assertThat(listed.code()).as(listed.err()).isZero();
        return JSON.readTree(listed.out()).path("records");
    }
}
