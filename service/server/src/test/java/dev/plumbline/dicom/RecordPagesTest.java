// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.agents.DoseShares;
import dev.plumbline.readout.PdfPage;
import dev.plumbline.readout.PersonName;
import dev.plumbline.readout.Readout;
import dev.plumbline.record.Cautions;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

class RecordPagesTest {
    @Test
    void saysWhoPlannedObservedAndSigned() {
        String text = RecordPages.text(RecordFixtures.IN_PLANE.report());
        assertThat(text)
                .startsWith("Imaging Measurement Report, signed\n")
                .contains("Sample, Invented  SAMPLE-0001")
                .contains("Sample, Signer  Sample Hospital")
                .containsPattern("Needle angle to skin line \\(0, 90\\] +60\\.5 deg ± 0\\.9 \\(k = 2\\)")
                .containsPattern("Entry from transducer midpoint.* 17\\.0 mm, exact")
                .containsPattern("Angle deviation, positive steeper +-27\\.4 deg ± 1\\.2 \\(k = 2\\)")
                .containsPattern("Block +Axillary brachial plexus block \\(Laterality: Right\\)")
                .endsWith(Cautions.text() + "\n");
    }

    @Test
    void givesTheReasonWhereThereIsNoNumber() {
        assertThat(RecordPages.text(RecordFixtures.TIP_NOT_CONFIRMED.report()))
                .containsPattern("Tip to target +no value: tip not confirmed")
                .containsPattern("Largest distance of shaft marks from their line +no value: not marked");
    }

    @Test
    void callsADraftADraft() {
        assertThat(RecordPages.text(RecordFixtures.DRAFT.report()))
                .startsWith("Imaging Measurement Report, draft, not signed");
    }

    @Test
    void usesNoWordThatTheProductNeverUses() {
        for (RecordFixtures fixture : RecordFixtures.values()) {
            String text = RecordPages.text(fixture.report())
                    .replace(Cautions.text(), "")
                    .replace(DoseShares.CAUTION, "")
                    .toLowerCase(Locale.ROOT);
            for (String never : List.of(
                    "safe",
                    "clear of",
                    "optimal",
                    "recommended",
                    "on target",
                    " hit",
                    " miss",
                    "error",
                    "accurate",
                    "guided",
                    "competent")) {
                assertThat(text).doesNotContain(never);
            }
        }
    }

    @Test
    void saysWhatWasDoneAtTheBedsideAndWhatNobodyRecorded() {
        String text = RecordPages.text(RecordFixtures.BEDSIDE.report());
        assertThat(text)
                .containsPattern("As written +As planned; differs from plan by little\\.")
                .containsPattern("Survey scan with light pressure and colour Doppler +Done \\(at 09:50:00, .*Roe, Al")
                .containsPattern("Probe held low and lightly +not recorded")
                .containsPattern("aCheckOfTheSite +Not done \\(at .*no time")
                .containsPattern("10:01:00 .*entered later, 10:05:00 by Roe, Al")
                .containsPattern("10:00:00 Stop moment .*Doe, Jo.*entered 10:00:05 by Roe, Al")
                .containsPattern("10:03:00 .*entered 10:03:00 by Roe, Al; corrected later")
                .containsPattern("10:03:00 Correction +corrects 10:03:00 .*wrong button.*entered 10:04:00")
                .containsPattern("No complications \\(.*10:12:00, Looked by: Doe, Jo\\)")
                .containsPattern("needle +not looked at")
                .containsPattern("Record made +2026-01-05  10:15:00  \\(UTC\\+01:00, as all times here\\)")
                .containsPattern("Number of passes +1 pass\n")
                .containsPattern("Age of the patient +44 years\n")
                .containsPattern("10:01:10 .*What was seen: Near part seen.*; entered 10:01:10 by Roe, Al\n")
                .containsPattern(
                        "Bupivacaine, given +61\\.73 mg, 0\\.8803 mg/kg of the actual weight, 5 mg/mL \\(label: 0\\.5 %\\)\n")
                .containsPattern("volumes +drawn up 20 mL, entered as given 12\\.3456789 mL, discarded 5 mL\n")
                .containsPattern("Bupivacaine, over the session +61\\.73 mg\n")
                .containsPattern("share +61\\.73 % of 100 mg, Invented list, edition 1, approved by Doe, Jo\n")
                .containsPattern("share +none: the approved limits have no row for this dose\n")
                .contains(DoseShares.CAUTION)
                .doesNotContain("Roe^Al", "Doe^Jo");
        assertThat(RecordPages.text(RecordFixtures.IN_PLANE.report())).doesNotContain("not recorded");
    }

    /** Consent and side have places of their own; no check of that name can be answered. */
    @Test
    void consentThatWasRecordedIsNotSaidToBeMissing() {
        assertThat(RecordPages.text(RecordFixtures.BEDSIDE.report()))
                .containsPattern("Consent +Done \\(at 09:30:00, .*Doe, Jo")
                .doesNotContainPattern("Consent +not recorded")
                .doesNotContainPattern("Side of the patient +not recorded");
    }

    @Test
    void aTimeOfAnotherDayNamesItsDay() {
        ReadoutWords words = ReadoutWords.of(new DataSet().put(Tag.CONTENT_DATE, "20260105"));
        assertThat(words.clock("20260105101500")).isEqualTo("10:15:00");
        assertThat(words.clock("20260104235959.25")).isEqualTo("2026-01-04 23:59:59");
        assertThat(words.clock("202601")).isEqualTo("202601");
    }

    @Test
    void namesStandWithoutTheirSeparators() {
        assertThat(PersonName.words("Doe^Jo^Max^Dr")).isEqualTo("Doe, Jo, Max, Dr");
        assertThat(PersonName.words("^Jo")).isEqualTo("Jo");
        assertThat(PersonName.words("Yamada^Tarou=\u5c71\u7530^\u592a\u90ce"))
                .isEqualTo("Yamada, Tarou (\u5c71\u7530, \u592a\u90ce)");
        assertThat(PersonName.words("^")).isEqualTo("not stated");
    }

    @Test
    void whatIsMoreThanAPageGoesOnOnTheNext() throws IOException {
        String said = "said at the bedside ".repeat(400).strip();
        Readout.Section section = new Readout.Section(
                "Events",
                IntStream.range(0, 90)
                        .mapToObj(i -> new Readout.Line("line" + i, said.substring(0, 200)))
                        .toList());
        byte[] pdf = PdfPage.bytes(
                new Readout(
                        "Title",
                        "signed",
                        List.of(new Readout.Line("Patient", "P")),
                        List.of(section),
                        "Be careful.",
                        "2.25.1"),
                List.of());
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertThat(document.getNumberOfPages()).isGreaterThan(1);
            String text = new PDFTextStripper().getText(document);
            for (int i = 0; i < 90; i++) {
                assertThat(text).containsPattern("line" + i + "\\b");
            }
            assertThat(text).contains("page 1 of " + document.getNumberOfPages(), "Title, signed, P, continued");
        }
    }

    /** The whole of the bedside, one line for each thing. */
    @Test
    void aPageOfTheBedsideHoldsEveryEvent() throws IOException {
        byte[] pdf = PdfPage.bytes(RecordReadout.of(RecordFixtures.BEDSIDE.report()), List.of());
        try (PDDocument document = Loader.loadPDF(pdf)) {
            String text = new PDFTextStripper().getText(document);
            assertThat(text).contains("10:06:00").contains("10:12:00").contains("not recorded");
        }
    }
}
