// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What the index keeps of an object is what its whole JSON says, read without looking into its sequences. */
class IndexedJsonTest {
    @ParameterizedTest
    @EnumSource
    void saysTheSameAsTheWholeButForTheSequences(RecordFixtures fixture) {
        for (ComposedObject object : fixture.compose()) {
            ObjectNode whole = DicomJson.of(DataSets.of(object.bytes()), "");
            List<String> sequences = new ArrayList<>();
            whole.properties().forEach(attribute -> {
                if (attribute.getValue().path("vr").asText().equals("SQ")) {
                    sequences.add(attribute.getKey());
                }
            });
            assertThat(sequences).isNotEmpty();
            assertThat(DicomJson.withoutSequences(DataSets.of(object.bytes())))
                    .as(object.part())
                    .isEqualTo(whole.without(sequences));
        }
    }

    /** Numbers that stand as binary, several values, an empty one, and a text with blanks that belong to it. */
    @ParameterizedTest
    @EnumSource(names = {"EXPLICIT_LITTLE_ENDIAN", "IMPLICIT_LITTLE_ENDIAN", "EXPLICIT_BIG_ENDIAN"})
    void readsEveryKindOfValue(TransferSyntax syntax) {
        byte[] file = FileBytes.file(syntax)
                .text(0x00081030, "LO", "Right\\arm\\")
                .text(0x00100010, "PN", "Sample^Ann=")
                .text(0x00104000, "LT", "  kept\\so  ")
                .text(0x00180050, "DS", "0.10\\0.20")
                .text(0x00181023, "LO", "")
                .element(0x0018602C, "FD", new byte[8])
                .imagePixel(2, 2, "1")
                .element(Tag.PIXEL_DATA, "OW", new byte[4])
                .bytes();
        ObjectNode plain = DicomJson.withoutSequences(DataSets.of(file));
        assertThat(plain).hasSizeGreaterThan(15).isEqualTo(DicomJson.of(DataSets.of(file), ""));
    }
}
