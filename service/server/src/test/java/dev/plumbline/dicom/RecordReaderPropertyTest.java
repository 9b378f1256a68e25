// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.document.CaseDocuments;
import dev.plumbline.document.CaseJson;
import dev.plumbline.procedure.SightDetail;
import dev.plumbline.record.CaseDocument;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

class RecordReaderPropertyTest {
    @Provide
    Arbitrary<CaseDocument> recordable() {
        return CaseDocuments.any().map(AnyRecord::recordable);
    }

    @Property(tries = 300)
    void everyCaseDocumentComesBackFromItsRecord(@ForAll("recordable") CaseDocument document, @ForAll long seed)
            throws IOException {
        RecordSource source = AnyRecord.of(document, seed);
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
        RecordSource source = AnyRecord.of(document, seed);
        assertThat(TemplateCheck.check(RecordComposer.report(source, FramesUsed.of(source)))
                        .lines())
                .isEmpty();
    }

    @Provide
    Arbitrary<CaseDocument> atTheBedside() {
        return CaseDocuments.atTheBedside().map(AnyRecord::recordableAtTheBedside);
    }

    @Property(tries = 300)
    void everythingSaidAtTheBedsideComesBackFromItsRecord(
            @ForAll("atTheBedside") CaseDocument document, @ForAll long seed) throws IOException {
        RecordSource source = AnyRecord.of(document, seed);
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
