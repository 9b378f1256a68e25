// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import dev.plumbline.dicom.OutsideProgram;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/** The files that {@code plumbline record} writes over real frames, read by programs that are not ours. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class RecordFilesConformanceTest {
    private static final String PYTHON = "/usr/bin/python3";
    private static final Path SCRIPT = Path.of("src", "test", "resources", "python", "presentation.py");
    private static final String PDF_OF = "import sys, pydicom; d = pydicom.dcmread(sys.argv[1]);"
            + " open(sys.argv[2], 'wb').write(d.EncapsulatedDocument[:d.EncapsulatedDocumentLength])";

    @TempDir
    static Path folder;

    private Path record;

    @BeforeAll
    void writeTheRecord() throws IOException {
        new SampleFolder(folder);
        record = folder.resolve("record");
        Invoked invoked = Invoked.plumbline("record", folder.resolve("in-plane.json"), "--out", record);
        assertThat(invoked.code()).as(invoked.err()).isZero();
    }

    private static String text(String... command) {
        return new String(OutsideProgram.run(command), StandardCharsets.UTF_8);
    }

    @Test
    void everyFileIsWrittenAndConforms() throws IOException {
        try (Stream<Path> files = Files.list(record)) {
            List<Path> written = files.sorted().toList();
            assertThat(written)
                    .extracting(file -> file.getFileName().toString())
                    .containsExactly("ko.dcm", "pdf.dcm", "pr-1.dcm", "pr-2.dcm", "sc-1.dcm", "sc-2.dcm", "sr.dcm");
            for (Path file : written) {
                Invoked checked = Invoked.plumbline("check", file);
                assertThat(checked.code()).as(checked.out() + checked.err()).isZero();
            }
        }
    }

    private JsonNode drawn(String frame, String state) throws IOException {
        return new JsonMapper()
                .readTree(text(
                        PYTHON,
                        SCRIPT.toString(),
                        folder.resolve(frame).toString(),
                        record.resolve(state).toString(),
                        folder.resolve(state + ".ppm").toString()));
    }

    private static JsonNode line(JsonNode drawn, String layer) {
        for (JsonNode graphic : drawn) {
            if (graphic.path("layer").asText().equals(layer)
                    && graphic.path("type").asText().equals("POLYLINE")) {
                return graphic;
            }
        }
        throw new AssertionError("no line on layer " + layer);
    }

    /** On the frame with the needle the observed line runs along its bright shaft, and the planned one does not. */
    @Test
    void pydicomFindsTheObservedLineOnTheNeedle() throws IOException {
        JsonNode drawn = drawn("in-plane-needle.dcm", "pr-2.dcm");
        assertThat(drawn)
                .isNotEmpty()
                .allMatch(graphic -> graphic.path("onFrame").asBoolean());
        JsonNode observed = line(drawn, "OBSERVED");
        JsonNode planned = line(drawn, "PLAN");
        assertThat(observed.path("brightness").doubleValue())
                .isGreaterThan(1.2 * observed.path("beside").doubleValue())
                .isGreaterThan(1.2 * planned.path("brightness").doubleValue());
        assertThat(observed.path("order").intValue())
                .isGreaterThan(planned.path("order").intValue());
        assertThat(observed.path("words").get(0).asText()).startsWith("Observed 38.2°");
        assertThat(planned.path("words").get(0).asText()).isEqualTo("Plan 33.7°");
    }

    /** The same tracking UIDs and points as the report has, read by pydicom on both sides. */
    @Test
    void theLinesAreThoseOfTheReport() throws IOException {
        String report = text(
                PYTHON,
                "-c",
                "import sys, pydicom\n"
                        + "d = pydicom.dcmread(sys.argv[1])\n"
                        + "for top in d.ContentSequence:\n"
                        + "  for group in top.get('ContentSequence', []):\n"
                        + "    if group.get('ConceptNameCodeSequence', [{}])[0].get('CodeValue') != '125007': continue\n"
                        + "    uid = [i.UID for i in group.ContentSequence if i.ValueType == 'UIDREF'][0]\n"
                        + "    for num in group.ContentSequence:\n"
                        + "      below = num.get('ContentSequence', [])\n"
                        + "      if len(below) == 1 and below[0].ValueType == 'SCOORD':\n"
                        + "        print(uid, list(below[0].GraphicData))\n",
                record.resolve("sr.dcm").toString());
        for (String[] pair : new String[][] {{"in-plane-plan.dcm", "pr-1.dcm"}, {"in-plane-needle.dcm", "pr-2.dcm"}}) {
            for (JsonNode graphic : drawn(pair[0], pair[1])) {
                StringBuilder numbers = new StringBuilder();
                graphic.path("points")
                        .forEach(point -> numbers.append(numbers.isEmpty() ? "" : ", ")
                                .append(point.get(0).doubleValue())
                                .append(", ")
                                .append(point.get(1).doubleValue()));
                assertThat(report).contains(graphic.path("trackingUid").asText() + " [" + numbers + "]");
            }
        }
    }

    /** DCMTK takes the state for the frame; it draws no graphics of its own, but shows the frame through the state. */
    @Test
    void dcmtkShowsTheFrameThroughTheState() throws IOException {
        Path through = folder.resolve("through.pgm");
        Path plain = folder.resolve("plain.pgm");
        String frame = folder.resolve("in-plane-plan.dcm").toString();
        text("dcmp2pgm", "-p", record.resolve("pr-1.dcm").toString(), frame, through.toString());
        text("dcmp2pgm", frame, plain.toString());
        assertThat(through).isNotEmptyFile().hasSameBinaryContentAs(plain);
    }

    @Test
    void popplerReadsThePdfAsOnePageWithItsPicturesAndWords() throws IOException {
        Path pdf = folder.resolve("record.pdf");
        text(PYTHON, "-c", PDF_OF, record.resolve("pdf.dcm").toString(), pdf.toString());
        assertThat(text("pdfinfo", pdf.toString()))
                .containsPattern("Pages: +1\\n")
                .containsPattern("Page size: +595\\.\\d+ x 841\\.\\d+ pts \\(A4\\)")
                .doesNotContain("CreationDate");
        assertThat(text("pdfimages", "-list", pdf.toString()).lines().skip(2)).hasSize(2);
        assertThat(text("pdftotext", "-layout", pdf.toString(), "-"))
                .contains("signed", "33.7 deg ± ", "38.2 deg ± ", "Not a medical device");
        assertThat(text("pdffonts", pdf.toString())).contains("LiberationSans").doesNotContain(" no ");
    }
}
