// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.document.CaseJson;
import dev.plumbline.document.Door;
import dev.plumbline.problem.Refusal;
import dev.plumbline.procedure.SightDetail;
import dev.plumbline.record.Amendment;
import dev.plumbline.record.Companions;
import dev.plumbline.record.FrameRef;
import dev.plumbline.record.RecordRevision;
import dev.plumbline.record.Uids;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class RecordComposerTest {
    @ParameterizedTest
    @EnumSource
    void givesTheSameBytesForTheSameRevision(RecordFixtures fixture) {
        List<ComposedObject> first = fixture.compose();
        List<ComposedObject> second = fixture.compose();
        assertThat(second).hasSameSizeAs(first);
        for (int i = 0; i < first.size(); i++) {
            assertThat(second.get(i).bytes()).isEqualTo(first.get(i).bytes());
        }
    }

    /** Another institution and fewer companions are configured by then; the amendment is known from the report alone. */
    @ParameterizedTest
    @EnumSource
    void composesTheCompanionsLaterWithTheSameBytes(RecordFixtures fixture) {
        RecordRevision revision = fixture.revision();
        RecordRevision amended = revision.amending(new Amendment(1, 1, "read off wrongly", "the entry"));
        for (Companions wanted : List.of(Companions.ALL, new Companions(true, false, true))) {
            RecordComposer composer = new RecordComposer(RecordFixtures.INSTALLATION, wanted);
            List<ComposedObject> whole = composer.compose(amended, RecordFixtures.frames());
            RecordComposer.Begun begun = composer.begin(amended, RecordFixtures.frames());
            assertThat(begun.report().bytes()).isEqualTo(DataSets.bytes(whole, "sr"));
            List<ComposedObject> later = new RecordComposer(
                            RecordFixtures.INSTALLATION.at("Another place"), new Companions(false, true, false))
                    .companions(
                            revision, DataSets.of(begun.report().bytes()), begun.companions(), RecordFixtures.frames());
            assertThat(later)
                    .extracting(ComposedObject::part)
                    .containsExactlyElementsOf(whole.stream()
                            .map(ComposedObject::part)
                            .filter(part -> !part.equals("sr"))
                            .toList());
            later.forEach(object -> assertThat(object.bytes())
                    .as("%s of %s", object.part(), fixture)
                    .isEqualTo(DataSets.bytes(whole, object.part())));
        }
    }

    @Test
    void writesEveryCompanionOfEachFrameUsedAndNothingThatNamesALaterObject() {
        List<String> parts = RecordFixtures.IN_PLANE.compose().stream()
                .map(ComposedObject::part)
                .toList();
        assertThat(parts).containsExactly("sc/1", "sc/2", "pr/1", "pr/2", "sr", "pdf", "ko");
        assertThat(RecordFixtures.ONE_FRAME_FOR_BOTH.compose())
                .extracting(ComposedObject::part)
                .containsExactly("sc/1", "pr/1", "sr", "pdf", "ko");
    }

    @Test
    void leavesOutWhatIsSwitchedOffButNeverTheAnnotatedFrames() {
        RecordComposer composer =
                new RecordComposer(RecordFixtures.INSTALLATION).with(new Companions(false, false, false));
        assertThat(composer.compose(RecordFixtures.IN_PLANE.revision(), RecordFixtures.frames()))
                .extracting(ComposedObject::part)
                .containsExactly("sc/1", "sc/2", "sr");
        assertThat(composer.with(new Companions(false, true, false))
                        .compose(RecordFixtures.IN_PLANE.revision(), RecordFixtures.frames()))
                .extracting(ComposedObject::part)
                .containsExactly("sc/1", "sc/2", "sr", "pdf");
    }

    /** Attributes of a series are the same in all of its objects, those of later revisions included. */
    @Test
    void keepsTheSeriesDateOfTheFirstRevision() {
        RecordRevision first = RecordFixtures.IN_PLANE.revision();
        RecordRevision amended = new RecordRevision(
                first.caseId(),
                2,
                first.document(),
                first.comparison(),
                first.time().plusDays(3),
                first.time());
        DataSet report = DataSets.of(
                new RecordComposer(RecordFixtures.INSTALLATION).compose(amended, RecordFixtures.frames()), "sr");
        assertThat(report.string(Tag.SERIES_DATE)).contains("20260105");
        assertThat(report.string(Tag.CONTENT_DATE)).contains("20260108");
        assertThat(report.string(Tag.INSTANCE_NUMBER)).contains("2");
    }

    @Test
    void derivesIdentifiersFromCaseRevisionAndPart() {
        ComposedObject report = RecordFixtures.IN_PLANE.compose().stream()
                .filter(ComposedObject::isReport)
                .findFirst()
                .orElseThrow();
        assertThat(report.sopInstanceUid()).isEqualTo(Uids.instance("case-IN_PLANE", 1, "sr"));
        assertThat(RecordFixtures.IN_PLANE.report().string(Tag.SERIES_INSTANCE_UID))
                .contains(Uids.series("case-IN_PLANE", "sr"));
    }

    @Test
    void signedRecordsSayWhoVerifiedThemAndWhen() {
        DataSet report = RecordFixtures.IN_PLANE.report();
        assertThat(report.string(Tag.COMPLETION_FLAG)).contains("COMPLETE");
        assertThat(report.string(Tag.VERIFICATION_FLAG)).contains("VERIFIED");
        assertThat(report.string(Tag.PRELIMINARY_FLAG)).contains("FINAL");
        DataSet verifier = report.items(Tag.VERIFYING_OBSERVER_SEQUENCE).get(0);
        assertThat(verifier.string(Tag.VERIFYING_OBSERVER_NAME)).contains("Sample^Signer");
        assertThat(verifier.string(Tag.VERIFICATION_DATE_TIME)).contains("20260105101500+0100");
    }

    @Test
    void whoSignsForNobodyIsNotGivenAnOrganization() {
        Installation nameless =
                new Installation("2.25.1", "Station", "Model", "1", "0.1.0", "", "GB", SightDetail.SUMMARY);
        RecordSource source =
                new RecordSource(RecordFixtures.CUT_PATH_MIDLINE_UTC.revision(), nameless, RecordFixtures.frames());
        DataSet verifier = RecordComposer.report(source, FramesUsed.of(source))
                .items(Tag.VERIFYING_OBSERVER_SEQUENCE)
                .get(0);
        assertThat(verifier.string(Tag.VERIFYING_ORGANIZATION)).contains("Not stated");
    }

    @Test
    void draftsSayThatTheyArePartialAndNameNoVerifier() {
        DataSet report = RecordFixtures.DRAFT.report();
        assertThat(report.string(Tag.COMPLETION_FLAG)).contains("PARTIAL");
        assertThat(report.string(Tag.VERIFICATION_FLAG)).contains("UNVERIFIED");
        assertThat(report.string(Tag.PRELIMINARY_FLAG)).contains("PRELIMINARY");
        assertThat(report.holds(Tag.VERIFYING_OBSERVER_SEQUENCE)).isFalse();
    }

    @Test
    void namesThisProgramAsEquipmentAndNeverTheScanner() {
        assertThat(RecordFixtures.IN_PLANE.report().string(Tag.MANUFACTURER)).contains(Installation.MANUFACTURER);
    }

    @ParameterizedTest
    @EnumSource
    void listsExactlyTheObjectsThatTheTreeNames(RecordFixtures fixture) {
        DataSet report = fixture.report();
        Set<String> named = ContentReader.read(report)
                .walk()
                .filter(item -> item.value() instanceof ItemValue.Image)
                .map(item -> ((ItemValue.Image) item.value()).instance().sopInstanceUid())
                .collect(Collectors.toCollection(TreeSet::new));
        List<String> listed = report.items(Tag.CURRENT_REQUESTED_PROCEDURE_EVIDENCE_SEQUENCE).stream()
                .flatMap(study -> study.items(Tag.REFERENCED_SERIES_SEQUENCE).stream())
                .flatMap(series -> series.items(Tag.REFERENCED_SOP_SEQUENCE).stream())
                .map(instance ->
                        instance.string(Tag.REFERENCED_SOP_INSTANCE_UID).orElseThrow())
                .toList();
        assertThat(listed).containsExactlyInAnyOrderElementsOf(named);
    }

    @Test
    void refusesToSignAPlanThatWasOnlyProposed() {
        ObjectNode json = CaseJson.write(RecordFixtures.IN_PLANE.document());
        json.remove("intent");
        RecordRevision revision = RecordFixtures.revision(CaseJson.read(json, Door.HTTP));
        RecordComposer composer = new RecordComposer(RecordFixtures.INSTALLATION);
        assertThatThrownBy(() -> composer.compose(revision, RecordFixtures.frames()))
                .isInstanceOf(Refusal.class)
                .satisfies(e -> assertThat(((Refusal) e).problem().pointer()).isEqualTo("/intent"));
    }

    @Test
    void refusesAFrameOfAnotherPatient() {
        RecordFrames frames = ref -> {
            RecordFrame frame = RecordFixtures.frames().of(ref);
            if (ref.sopInstanceUid().endsWith("2")) {
                frame.header().put(Tag.PATIENT_ID, "SAMPLE-0002");
            }
            return frame;
        };
        RecordRevision revision = RecordFixtures.IN_PLANE.revision();
        RecordComposer composer = new RecordComposer(RecordFixtures.INSTALLATION);
        assertThatThrownBy(() -> composer.compose(revision, frames))
                .isInstanceOf(Refusal.class)
                .satisfies(e -> assertThat(((Refusal) e).problem().pointer()).isEqualTo("/observations/0/frame"));
    }

    @Test
    void refusesAFrameOfAnotherStudy() {
        RecordFrames frames = ref -> {
            RecordFrame frame = RecordFixtures.frames().of(ref);
            if (ref.sopInstanceUid().endsWith("2")) {
                frame.header().put(Tag.STUDY_INSTANCE_UID, "2.25.1009");
            }
            return frame;
        };
        RecordRevision revision = RecordFixtures.IN_PLANE.revision();
        RecordComposer composer = new RecordComposer(RecordFixtures.INSTALLATION);
        assertThatThrownBy(() -> composer.compose(revision, frames))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("another study")
                .satisfies(e -> assertThat(((Refusal) e).problem().pointer()).isEqualTo("/observations/0/frame"));
    }

    @Test
    void findsEachFrameOnlyOnce() {
        List<FrameRef.Held> asked = new ArrayList<>();
        RecordFrames frames = ref -> {
            asked.add(ref);
            return RecordFixtures.frames().of(ref);
        };
        new RecordComposer(RecordFixtures.INSTALLATION).compose(RecordFixtures.IN_PLANE.revision(), frames);
        assertThat(asked).doesNotHaveDuplicates().hasSize(2);
    }

    @Test
    void keepsAnImageThatWasLossyMarkedAsLossy() {
        RecordFrames frames = ref -> {
            RecordFrame frame = RecordFixtures.frames().of(ref);
            frame.header().put(Tag.LOSSY_IMAGE_COMPRESSION, "01").put(Tag.LOSSY_IMAGE_COMPRESSION_RATIO, "8.5");
            return frame;
        };
        RecordSource source = new RecordSource(RecordFixtures.IN_PLANE.revision(), RecordFixtures.INSTALLATION, frames);
        DataSet capture = SecondaryCapture.of(
                source, FramesUsed.of(source).get(1), 2, new BufferedImage(2, 2, BufferedImage.TYPE_INT_RGB));
        assertThat(capture.string(Tag.LOSSY_IMAGE_COMPRESSION)).contains("01");
        assertThat(capture.items(Tag.SOURCE_IMAGE_SEQUENCE).get(0).string(Tag.REFERENCED_FRAME_NUMBER))
                .contains("7");
        assertThat(capture.holds(Tag.PIXEL_SPACING)).isFalse();
        assertThat(capture.holds(Tag.SEQUENCE_OF_ULTRASOUND_REGIONS)).isFalse();
    }
}
