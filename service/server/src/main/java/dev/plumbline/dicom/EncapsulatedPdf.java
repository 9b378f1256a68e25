// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.util.List;

/** The readable record as an Encapsulated PDF, DICOM PS3.3 A.45.1; it names the structured report it was made from. */
final class EncapsulatedPdf {
    static final String MIME_TYPE = "application/pdf";

    private EncapsulatedPdf() {}

    /** @param report the whole data set of the structured report */
    static DataSet of(RecordSource source, DataSet report, byte[] pdf) {
        Timestamp time = new Timestamp(source.revision().time());
        return ObjectHeader.of(source, ObjectHeader.Kind.PDF, ObjectHeader.Kind.PDF.part())
                .put(Tag.LATERALITY, ObjectHeader.laterality(source.revision().document()))
                .put(Tag.CONVERSION_TYPE, "WSD")
                .put(Tag.INSTANCE_NUMBER, Integer.toString(source.revision().revision()))
                .put(Tag.CONTENT_DATE, time.date())
                .put(Tag.CONTENT_TIME, time.timeOfDay())
                .putEmpty(Tag.ACQUISITION_DATE_TIME)
                .put(Tag.BURNED_IN_ANNOTATION, "YES")
                .put(Tag.SOURCE_INSTANCE_SEQUENCE, List.of(reference(report)))
                .put(Tag.DOCUMENT_TITLE, "Needle path record")
                .put(Tag.CONCEPT_NAME_CODE_SEQUENCE, List.of(ContentWriter.code(Concepts.IMAGING_MEASUREMENT_REPORT)))
                .put(Tag.MIME_TYPE_OF_ENCAPSULATED_DOCUMENT, MIME_TYPE)
                .put(Tag.ENCAPSULATED_DOCUMENT_LENGTH, pdf.length)
                .put(Tag.ENCAPSULATED_DOCUMENT, pdf);
    }

    private static DataSet reference(DataSet report) {
        return new DataSet()
                .put(
                        Tag.REFERENCED_SOP_CLASS_UID,
                        report.string(Tag.SOP_CLASS_UID).orElseThrow())
                .put(
                        Tag.REFERENCED_SOP_INSTANCE_UID,
                        report.string(Tag.SOP_INSTANCE_UID).orElseThrow());
    }
}
