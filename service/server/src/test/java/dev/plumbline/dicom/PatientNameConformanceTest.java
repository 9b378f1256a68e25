// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Patient names in legacy character sets arrive in the record unharmed, as pydicom reads both. The files are pydicom's own
 * (package python3-pydicom), names of DICOM PS3.5 annexes H to K among them.
 */
class PatientNameConformanceTest {
    private static final Path FILES = Path.of("/usr/lib/python3/dist-packages/pydicom/data/charset_files");
    private static final String SAME_NAME = """
            import sys, pydicom
            source, record = (pydicom.dcmread(name, force=True) for name in sys.argv[1:])
            assert record.SpecificCharacterSet == 'ISO_IR 192', record.SpecificCharacterSet
            source.decode(); record.decode()
            assert str(source.PatientName) == str(record.PatientName), (source.PatientName, record.PatientName)
            print('same name')
            """;

    @TempDir
    Path folder;

    @ParameterizedTest
    @ValueSource(
            strings = {
                "chrArab",
                "chrFren",
                "chrGerm",
                "chrGreek",
                "chrH31",
                "chrH32",
                "chrHbrw",
                "chrI2",
                "chrKoreanMulti",
                "chrRuss",
                "chrX1",
                "chrX2"
            })
    void keepsTheNameInEveryCharacterSet(String name) throws IOException {
        Path source = FILES.resolve(name + ".dcm");
        DataSet named = DicomFile.open(source).header();
        RecordFrames frames = ref -> {
            RecordFrame frame = RecordFixtures.frames().of(ref);
            frame.header().copy(Tag.SPECIFIC_CHARACTER_SET, named).copy(Tag.PATIENT_NAME, named);
            return frame;
        };
        RecordSource record = new RecordSource(RecordFixtures.IN_PLANE.revision(), RecordFixtures.INSTALLATION, frames);
        Path file = folder.resolve("record.dcm");
        Files.write(file, DicomFile.encode(RecordComposer.report(record, FramesUsed.of(record))));
        OtherProgram.Verdict verdict =
                OtherProgram.run("/usr/bin/python3", "-c", SAME_NAME, source.toString(), file.toString());
        assertThat(verdict.lines()).isEqualTo(List.of("same name"));
    }
}
