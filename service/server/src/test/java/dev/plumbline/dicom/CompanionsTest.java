// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.readout.PdfPage;
import dev.plumbline.record.Uids;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Key objects and PDF of a record, and what all of its objects have in common. */
class CompanionsTest {
    private final List<ComposedObject> objects = RecordFixtures.IN_PLANE.compose();

    @Test
    void everyKindHasASeriesOfItsOwnInThePatientsStudy() {
        for (String kind : List.of("sc", "pr", "sr", "pdf", "ko")) {
            List<DataSet> ofKind = objects.stream()
                    .filter(object ->
                            object.part().equals(kind) || object.part().startsWith(kind + "/"))
                    .map(object -> DataSets.of(object.bytes()))
                    .toList();
            assertThat(ofKind).isNotEmpty().allSatisfy(object -> {
                assertThat(object.string(Tag.STUDY_INSTANCE_UID)).contains("2.25.1001");
                assertThat(object.string(Tag.PATIENT_ID)).contains("SAMPLE-0001");
                assertThat(object.string(Tag.SERIES_INSTANCE_UID)).contains(Uids.series("case-IN_PLANE", kind));
                assertThat(object.string(Tag.SERIES_DATE)).contains("20260105");
            });
        }
    }

    @Test
    void keyObjectsNameTheFramesAndEveryObjectOfTheRecord() {
        ContentItem root = ContentReader.read(DataSets.of(objects, "ko"));
        List<String> named = root.children().stream()
                .flatMap(item -> item.value() instanceof ItemValue.Image image
                        ? Stream.of(image.instance().sopInstanceUid())
                        : item.value() instanceof ItemValue.Composite composite
                                ? Stream.of(composite.instance().sopInstanceUid())
                                : Stream.of())
                .toList();
        List<String> made = objects.stream()
                .filter(object -> !object.part().equals("ko"))
                .map(ComposedObject::sopInstanceUid)
                .toList();
        assertThat(named).startsWith("2.25.3001", "2.25.3002").containsAll(made).hasSize(2 + made.size());
        assertThat(root.textOf(Codes.dcm("113012")))
                .hasValueSatisfying(text -> assertThat(text)
                        .contains("1: Target and structures before puncture.")
                        .contains("2 (frame 7): Needle with tip at its final place, before injection."));
    }

    @Test
    void theKeyObjectsAreNeitherCompleteNorVerified() {
        DataSet selection = DataSets.of(objects, "ko");
        assertThat(selection.holds(Tag.COMPLETION_FLAG)).isFalse();
        selection.put(Tag.COMPLETION_FLAG, "COMPLETE");
        assertThat(ObjectCheck.check(selection).report().lines())
                .singleElement()
                .satisfies(line -> assertThat(line.text()).contains("no place in a key object selection"));
    }

    @Test
    void thePdfIsOnePageOfItsStatedLengthAndNamesTheReport() {
        DataSet pdf = DataSets.of(objects, "pdf");
        byte[] padded = pdf.bytes(Tag.ENCAPSULATED_DOCUMENT);
        int length = pdf.integer(Tag.ENCAPSULATED_DOCUMENT_LENGTH).orElseThrow();
        assertThat(padded.length - length).isBetween(0, 1);
        assertThat(PdfPage.pages(Arrays.copyOf(padded, length))).hasValue(1);
        assertThat(pdf.items(Tag.SOURCE_INSTANCE_SEQUENCE).get(0).string(Tag.REFERENCED_SOP_INSTANCE_UID))
                .contains(Uids.instance("case-IN_PLANE", 1, "sr"));
    }

    @Test
    void theCheckFindsAPdfThatIsNone() {
        DataSet pdf = DataSets.of(objects, "pdf");
        pdf.put(Tag.ENCAPSULATED_DOCUMENT, new byte[] {'%', 'P', 'D', 'F', '-', '1'})
                .put(Tag.ENCAPSULATED_DOCUMENT_LENGTH, 6);
        assertThat(ObjectCheck.check(pdf).report().lines())
                .singleElement()
                .satisfies(line -> assertThat(line.text()).isEqualTo("is no PDF that has a page"));
        pdf.put(Tag.ENCAPSULATED_DOCUMENT_LENGTH, 60);
        assertThat(ObjectCheck.check(pdf).report().lines())
                .singleElement()
                .satisfies(line -> assertThat(line.text()).startsWith("states 60 bytes"));
    }

    @Test
    void theCheckFindsAnAnnotatedFrameWithAScaleOfItsOwn() {
        DataSet capture = DataSets.of(objects, "sc/1").put(Tag.PIXEL_SPACING, "0.1", "0.1");
        assertThat(ObjectCheck.check(capture).report().lines())
                .singleElement()
                .satisfies(line -> assertThat(line.text()).startsWith("gives a scale"));
    }
}
