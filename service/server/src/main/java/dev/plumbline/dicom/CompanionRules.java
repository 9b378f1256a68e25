// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.readout.PdfPage;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;

/** What an annotated frame and a PDF of a record must say beside what every program checks. */
final class CompanionRules {
    private static final String REPORT = ObjectHeader.Kind.REPORT.sopClassUid();

    private final DataSet object;
    private final Findings findings;

    CompanionRules(DataSet object, Findings findings) {
        this.object = object;
        this.findings = findings;
    }

    /** A Secondary Capture that is drawn on: it names its frame, says so, and carries no scale of its own. */
    void annotatedFrame() {
        require(Tag.BURNED_IN_ANNOTATION, "YES");
        require(Tag.PHOTOMETRIC_INTERPRETATION, "RGB");
        if (!object.strings(Tag.IMAGE_TYPE).equals(List.of("DERIVED", "SECONDARY"))) {
            findings.at(Tag.IMAGE_TYPE, "is not DERIVED\\SECONDARY");
        }
        List<DataSet> sources = object.items(Tag.SOURCE_IMAGE_SEQUENCE);
        if (sources.size() != 1) {
            findings.at(Tag.SOURCE_IMAGE_SEQUENCE, "does not name exactly the one frame that was drawn on");
        }
        for (DataSet source : sources) {
            boolean several = source.string(Tag.REFERENCED_SOP_CLASS_UID)
                    .filter(CoordinateRules.MULTI_FRAME::equals)
                    .isPresent();
            if (several && source.strings(Tag.REFERENCED_FRAME_NUMBER).isEmpty()) {
                findings.at(Tag.SOURCE_IMAGE_SEQUENCE, "names an object with frames and no frame of it");
            }
        }
        for (int scale : new int[] {Tag.PIXEL_SPACING, Tag.SEQUENCE_OF_ULTRASOUND_REGIONS}) {
            if (object.holds(scale)) {
                findings.at(scale, "gives a scale; lengths are measured on the frame, not on its drawing");
            }
        }
    }

    /** A PDF that names the report it shows, of the stated length, of one page. */
    void pdf() {
        require(Tag.MIME_TYPE_OF_ENCAPSULATED_DOCUMENT, EncapsulatedPdf.MIME_TYPE);
        boolean namesReport = object.items(Tag.SOURCE_INSTANCE_SEQUENCE).stream()
                .anyMatch(source -> source.string(Tag.REFERENCED_SOP_CLASS_UID)
                        .filter(REPORT::equals)
                        .isPresent());
        if (!namesReport) {
            findings.at(Tag.SOURCE_INSTANCE_SEQUENCE, "does not name the structured report");
        }
        byte[] document = object.bytes(Tag.ENCAPSULATED_DOCUMENT);
        int length = object.integer(Tag.ENCAPSULATED_DOCUMENT_LENGTH).orElse(-1);
        if (length < 0 || length > document.length || document.length - length > 1) {
            findings.at(
                    Tag.ENCAPSULATED_DOCUMENT_LENGTH,
                    "states " + length + " bytes where the document has " + document.length);
            return;
        }
        byte[] bytes = Arrays.copyOf(document, length);
        if (!new String(bytes, 0, Math.min(5, length), StandardCharsets.US_ASCII).equals("%PDF-")) {
            findings.at(Tag.ENCAPSULATED_DOCUMENT, "is no PDF");
        } else if (PdfPage.pages(bytes).orElse(0) == 0) {
            findings.at(Tag.ENCAPSULATED_DOCUMENT, "is no PDF that has a page");
        }
    }

    private void require(int tag, String value) {
        if (object.string(tag).filter(value::equals).isEmpty()) {
            findings.at(tag, "is not " + value);
        }
    }
}
