// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.document.CaseDocuments;
import dev.plumbline.document.CaseJson;
import dev.plumbline.document.Door;
import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.procedure.Happening;
import dev.plumbline.procedure.LoggedEvent;
import dev.plumbline.procedure.SightDetail;
import dev.plumbline.record.Bedside;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.RecordRevision;
import dev.plumbline.record.Signature;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

class RecordReaderPropertyTest {
    private static final FrameGeometry BARE =
            new FrameGeometry(640, 640, List.of(), Optional.empty(), Optional.empty(), "bare");
    private static final RecordFrames FRAMES = ref -> new RecordFrame(
            RecordFixtures.header("2.25.2").put(Tag.SOP_INSTANCE_UID, ref.sopInstanceUid()),
            ref.scale().isPresent() ? BARE : RecordFixtures.geometry(),
            new BufferedImage(1, 1, BufferedImage.TYPE_INT_RGB));

    @Provide
    Arbitrary<CaseDocument> recordable() {
        return CaseDocuments.any().map(RecordReaderPropertyTest::recordable);
    }

    /** As a record needs it: every frame of an object, an identifier, and roles that have a code. */
    private static CaseDocument recordable(CaseDocument document) {
        ObjectNode json = CaseJson.write(document);
        json.put("caseId", json.path("caseId").asText("case-of-chance"));
        held(json);
        json.path("observations").forEach(RecordReaderPropertyTest::held);
        role(json.path("context").path("operator"), "performer");
        role(json.path("signature"), "verifier");
        return CaseJson.read(json, Door.HTTP);
    }

    private static void held(JsonNode holder) {
        if (!holder.path("frame").has("sopInstanceUid")) {
            ((ObjectNode) holder)
                    .putObject("frame")
                    .put("sopInstanceUid", "2.25.77")
                    .put("frameNumber", 3);
        }
    }

    private static void role(JsonNode person, String role) {
        if (person.has("role")) {
            ((ObjectNode) person).put("role", role);
        }
    }

    private static RecordSource source(CaseDocument document, long seed) {
        OffsetDateTime time =
                document.signature().map(Signature::time).orElse(OffsetDateTime.parse("2026-01-05T10:20:00+01:00"));
        RecordRevision revision = new RecordRevision(
                document.caseId().orElseThrow(), 1, document, AnyComparison.of(document, new Random(seed)), time);
        return new RecordSource(revision, RecordFixtures.INSTALLATION, FRAMES);
    }

    @Property(tries = 300)
    void everyCaseDocumentComesBackFromItsRecord(@ForAll("recordable") CaseDocument document, @ForAll long seed)
            throws IOException {
        RecordSource source = source(document, seed);
        Path file = Files.createTempFile("record", ".dcm");
        try {
            Files.write(file, DicomFile.encode(RecordComposer.report(source, FramesUsed.of(source))));
            assertThat(CaseJson.canonical(RecordReader.read(DicomFile.open(file).header())))
                    .isEqualTo(CaseJson.canonical(document));
        } finally {
            Files.delete(file);
        }
    }

    @Property(tries = 300)
    void everyRecordConformsToOurTemplates(@ForAll("recordable") CaseDocument document, @ForAll long seed) {
        RecordSource source = source(document, seed);
        assertThat(TemplateCheck.check(RecordComposer.report(source, FramesUsed.of(source)))
                        .lines())
                .isEmpty();
    }

    @Provide
    Arbitrary<CaseDocument> atTheBedside() {
        return CaseDocuments.atTheBedside()
                .map(RecordReaderPropertyTest::recordable)
                .map(document -> document.withBedside(consistent(document.bedside())));
    }

    /** As the doors let it in: corrections of something that stands, and no mixture without its volume. */
    private static Bedside consistent(Bedside bedside) {
        List<LoggedEvent> events = new ArrayList<>();
        Set<String> corrected = new HashSet<>();
        for (LoggedEvent event : bedside.events()) {
            if (!(event.what() instanceof Happening.Correction correction)
                    || (events.stream().anyMatch(e -> e.id().equals(correction.corrects()))
                            && corrected.add(correction.corrects()))) {
                events.add(event);
            }
        }
        return new Bedside(
                bedside.session(),
                bedside.team(),
                bedside.checks(),
                events,
                bedside.agents().stream()
                        .filter(entry -> entry.handling().mixture().isEmpty())
                        .toList(),
                bedside.surroundings(),
                bedside.impression(),
                bedside.sightDetail(),
                bedside.frames());
    }

    @Property(tries = 300)
    void everythingSaidAtTheBedsideComesBackFromItsRecord(
            @ForAll("atTheBedside") CaseDocument document, @ForAll long seed) throws IOException {
        RecordSource source = source(document, seed);
        Path file = Files.createTempFile("record", ".dcm");
        try {
            Files.write(file, DicomFile.encode(RecordComposer.report(source, FramesUsed.of(source))));
            SightDetail detail = document.bedside().sightDetail().orElse(SightDetail.SUMMARY);
            CaseDocument told = document.withBedside(
                    document.bedside().withEvents(detail.kept(document.bedside().log())));
            assertThat(CaseJson.canonical(RecordReader.read(DicomFile.open(file).header())))
                    .isEqualTo(CaseJson.canonical(told));
            assertThat(TemplateCheck.check(DicomFile.open(file).header()).lines())
                    .isEmpty();
        } finally {
            Files.delete(file);
        }
    }
}
