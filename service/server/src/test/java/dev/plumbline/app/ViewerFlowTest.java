// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.app;

import static dev.plumbline.app.ViewerStudy.CASE;
import static dev.plumbline.app.ViewerStudy.OBSERVED;
import static dev.plumbline.app.ViewerStudy.PLANNED;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import dev.plumbline.dicom.OutsideProgram;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A web viewer of others in a headless browser, with nothing but this service behind it: what we write is seen in it, and
 * what is drawn in it comes back, is signed, and is seen again.
 */
class ViewerFlowTest {
    @TempDir
    Path folder;

    private ViewerStudy study;

    @BeforeEach
    void start() throws IOException {
        study = ViewerStudy.withFrames(folder.resolve("data"));
    }

    @AfterEach
    void stop() throws IOException {
        study.close();
    }

    @Test
    void aSignedRecordIsSeenAsItWasWritten() throws Exception {
        study.client.postJson("/v1/records", CASE.toString());
        Sitting sitting = Sitting.at(study.address(), "look.mjs", "look", study.uid(), PLANNED, OBSERVED);
        sitting.assertNothingWasRefused();
        JsonNode seen = sitting.found();
        JsonNode report = seen.path("report");
        assertThat(report.path("ended").asText()).isEqualTo("resolved");
        assertThat(report.path("measurements"))
                .hasSizeGreaterThanOrEqualTo(3)
                .allSatisfy(read -> assertThat(read.path("loaded").asBoolean())
                        .as(read.path("labels").toString())
                        .isTrue());

        List<ReportLines.Line> written = study.lines("Needle path record");
        assertThat(sitting.texts(PLANNED)).anyMatch(text -> text.startsWith("Plan 33.7\u00b0: / Depth: 30.00 mm"));
        assertThat(sitting.textsInside(PLANNED)).anyMatch(text -> text.startsWith("Plan 33.7\u00b0:"));
        assertThat(sitting.shows(ViewerStudy.line(written, "Plan 33.7\u00b0", PLANNED)))
                .isTrue();
        assertThat(sitting.texts(OBSERVED)).anyMatch(text -> text.startsWith("Plan 33.7\u00b0:"));
        assertThat(sitting.textsInside(OBSERVED))
                .anyMatch(text ->
                        text.startsWith("Observed 38.2\u00b0: / 4.5\u00b0 steeper: / Depth: 30.90 mm / Distance:"));
        assertThat(sitting.shows(ViewerStudy.line(written, "Observed 38.2\u00b0", OBSERVED)))
                .isTrue();

        JsonNode annotated = study.only("/dicomweb/instances?SOPInstanceUID="
                + seen.path("annotated").path("sopInstanceUid").asText());
        assertThat(seen.path("annotated").path("columns").asInt())
                .isEqualTo(annotated.at("/00280011/Value/0").asInt());
        assertThat(seen.path("annotated").path("rows").asInt())
                .isEqualTo(annotated.at("/00280010/Value/0").asInt());
        assertThat(seen.path("document").asText()).isEqualTo(sha256(document()));
    }

    @Test
    void marksDrawnWithTheMouseBecomeASignedRecordThatTheSameViewerShows() {
        Sitting drawn = Sitting.at(study.address(), "draw.mjs", "draw", study.uid(), ViewerStudy.drawing());
        drawn.assertNothingWasRefused();
        assertThat(drawn.found().path("status").asInt()).isEqualTo(200);
        JsonNode account = study.assertDrawnMarksAreTheCases();
        study.signed(account);

        Sitting again = Sitting.at(study.address(), "look.mjs", "again", study.uid(), PLANNED, OBSERVED);
        again.assertNothingWasRefused();
        study.assertRecordIsShown(again, account);
    }

    /**
     * The eyes of these tests: a report whose lines are not where the record has them is told from one whose are. The plan
     * is drawn alike on both frames, so exchanging the frames moves the observed line only.
     */
    @ParameterizedTest
    @CsvSource({"intact, true, true", "moved, false, false", "imageless, false, false", "elsewhere, true, false"})
    void aDamagedReportIsNoticed(String damage, boolean plan, boolean observed) throws Exception {
        study.client.postJson("/v1/records", CASE.toString());
        List<ReportLines.Line> written = study.lines("Needle path record");
        JsonNode held = study.only("/dicomweb/instances?SeriesDescription=Needle%20path%20record&Modality=SR");
        Path report = Files.write(folder.resolve("report.dcm"), study.client.retrieve(ViewerStudy.instance(held)));
        Path damaged = folder.resolve("damaged.dcm");
        OutsideProgram.run(
                "/usr/bin/python3",
                "src/test/resources/python/damage_report.py",
                report.toString(),
                damage,
                damaged.toString());
        try (ViewerStudy other = ViewerStudy.withFrames(folder.resolve("other"))) {
            other.client.postDicom("/dicomweb/studies", Files.readAllBytes(damaged));
            Sitting sitting =
                    Sitting.at(other.address(), "glance.mjs", "damaged-" + damage, other.uid(), PLANNED, OBSERVED);
            assertThat(sitting.shows(ViewerStudy.line(written, "Plan 33.7\u00b0", PLANNED)))
                    .as("the plan of a report that is " + damage)
                    .isEqualTo(plan);
            assertThat(sitting.shows(ViewerStudy.line(written, "Observed 38.2\u00b0", OBSERVED)))
                    .as("the needle of a report that is " + damage)
                    .isEqualTo(observed);
        }
    }

    /** The bytes of the encapsulated PDF. */
    private byte[] document() {
        JsonNode page = study.only("/dicomweb/instances?Modality=DOC&includefield=all");
        return study.client.get(ViewerStudy.instance(page) + "/bulkdata/00420011", "application/pdf");
    }

    private static String sha256(byte[] bytes) throws Exception {
        return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    }
}
