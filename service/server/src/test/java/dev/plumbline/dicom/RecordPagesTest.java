// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.record.Cautions;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

class RecordPagesTest {
    @Test
    void saysWhoPlannedObservedAndSigned() {
        String text = RecordPages.text(RecordFixtures.IN_PLANE.report());
        assertThat(text)
                .startsWith("Imaging Measurement Report, signed\n")
                .contains("Sample^Invented  SAMPLE-0001")
                .contains("Sample^Signer  Sample Hospital")
                .containsPattern("Needle angle to skin line \\(0, 90\\] +60\\.5 deg ± 0\\.9 \\(k = 2\\)")
                .containsPattern("Entry from transducer midpoint.* 17\\.0 mm, exact")
                .containsPattern("Angle deviation, positive steeper +-27\\.4 deg ± 1\\.2 \\(k = 2\\)")
                .containsPattern("Block +Axillary brachial plexus block \\(Laterality: Right\\)")
                .endsWith(Cautions.text() + "\n");
    }

    @Test
    void givesTheReasonWhereThereIsNoNumber() {
        assertThat(RecordPages.text(RecordFixtures.TIP_NOT_CONFIRMED.report()))
                .containsPattern("Tip to target +no value: tip not confirmed");
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
}
