// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.plumbline.problem.Refusal;
import dev.plumbline.record.RecordRevision;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Frames that a case keeps for what they show, in the library and the key objects. */
class KeptFramesTest {
    private static List<ContentItem> library(DataSet report) {
        return ContentReader.read(report)
                .first(Concepts.IMAGE_LIBRARY)
                .flatMap(library -> library.first(Concepts.IMAGE_LIBRARY_GROUP))
                .orElseThrow()
                .children()
                .stream()
                .filter(item -> item.value() instanceof ItemValue.Image)
                .toList();
    }

    private static String told(ContentItem item) {
        ItemValue.Instance instance = ((ItemValue.Image) item.value()).instance();
        return instance.sopInstanceUid() + " "
                + instance.frameNumber().orElse(1) + " "
                + item.codeOf(Codes.own("IMG-ROLE")).map(Code::value).orElse("none");
    }

    /** First those that something was made on; a stated role goes before the one that would follow. */
    @Test
    void standInTheLibraryWithTheirRoles() {
        assertThat(library(RecordFixtures.BEDSIDE.report()))
                .extracting(KeptFramesTest::told)
                .containsExactly(
                        "2.25.3001 1 FR-OTHER",
                        "2.25.3002 7 FR-NEEDLE",
                        "2.25.3002 3 FR-DOPPLER",
                        "2.25.3003 1 FR-SPREAD");
        assertThat(library(RecordFixtures.IN_PLANE.report()))
                .extracting(KeptFramesTest::told)
                .containsExactly("2.25.3001 1 FR-PRESCAN", "2.25.3002 7 FR-NEEDLE");
    }

    @Test
    void standInTheKeyObjectsAndAreNotDrawn() {
        List<ComposedObject> objects = RecordFixtures.BEDSIDE.compose();
        assertThat(objects)
                .filteredOn(object -> object.part().startsWith("sc/"))
                .hasSize(2);
        assertThat(objects)
                .filteredOn(object -> object.part().startsWith("pr/"))
                .hasSize(2);
        RecordSource source = RecordFixtures.BEDSIDE.source();
        ContentItem selection = ContentReader.read(KeyObjects.of(source, FramesUsed.of(source), List.of()));
        assertThat(selection.children())
                .filteredOn(item -> item.value() instanceof ItemValue.Image)
                .extracting(item -> ((ItemValue.Image) item.value()).instance().sopInstanceUid())
                .containsExactly("2.25.3001", "2.25.3002", "2.25.3002", "2.25.3003");
        assertThat(selection.textOf(Codes.dcm("113012")))
                .get()
                .asString()
                .contains("3 (frame 3): Flow before puncture.")
                .contains("4: Spread of the injectate.");
    }

    @ParameterizedTest
    @CsvSource({"PATIENT, another patient", "STUDY, another study"})
    void aFrameOfAnotherPatientOrStudyIsRefusedWithItsPlace(String what, String words) {
        RecordRevision revision = RecordFixtures.BEDSIDE.revision();
        RecordFrames frames = ref -> {
            RecordFrame frame = RecordFixtures.frames().of(ref);
            return ref.sopInstanceUid().equals("2.25.3003")
                    ? new RecordFrame(other(frame.header(), what), frame.geometry(), frame.rendered())
                    : frame;
        };
        assertThatThrownBy(() -> new RecordComposer(RecordFixtures.INSTALLATION).compose(revision, frames))
                .isInstanceOf(Refusal.class)
                .extracting(thrown -> ((Refusal) thrown).problem())
                .satisfies(problem -> {
                    assertThat(problem.pointer()).isEqualTo("/frames/2/frame");
                    assertThat(problem.detail()).contains(words);
                });
    }

    private static DataSet other(DataSet header, String what) {
        return what.equals("PATIENT")
                ? header.put(Tag.PATIENT_ID, "SAMPLE-0002")
                : header.put(Tag.STUDY_INSTANCE_UID, "2.25.1002");
    }

    @Test
    void areReadBackInTheirOrder() {
        assertThat(RecordReader.read(RecordFixtures.BEDSIDE.report()).bedside().frames())
                .isEqualTo(RecordFixtures.BEDSIDE.document().bedside().frames())
                .hasSize(3);
        assertThat(Optional.of(RecordReader.read(RecordFixtures.IN_PLANE.report())
                        .bedside()
                        .frames()))
                .contains(List.of());
    }
}
