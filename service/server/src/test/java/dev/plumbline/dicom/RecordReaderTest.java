// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.plumbline.document.CaseJson;
import dev.plumbline.problem.Refusal;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class RecordReaderTest {
    @TempDir
    Path folder;

    @ParameterizedTest
    @EnumSource
    void givesBackTheCaseDocumentFromTheFile(RecordFixtures fixture) throws IOException {
        ComposedObject report = fixture.compose().stream()
                .filter(object -> object.part().equals("sr"))
                .findFirst()
                .orElseThrow();
        Path file = Files.write(folder.resolve("record.dcm"), report.bytes());
        assertThat(CaseJson.canonical(RecordReader.read(DicomFile.open(file).header())))
                .isEqualTo(CaseJson.canonical(fixture.document()));
    }

    @Test
    void refusesAReportOfAnotherProgram() {
        DataSet report = RecordFixtures.IN_PLANE.report().remove(Tag.CONTENT_SEQUENCE);
        assertThatThrownBy(() -> RecordReader.read(report))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("no record of this program");
    }

    @Test
    void refusesAnObjectThatIsNoReport() {
        assertThatThrownBy(() -> RecordReader.read(RecordFixtures.header("2.25.3001")))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("no content tree");
    }
}
