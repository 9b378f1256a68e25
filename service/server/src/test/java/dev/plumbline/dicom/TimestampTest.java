// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TimestampTest {
    @ParameterizedTest
    @CsvSource({
        "2026-01-05T10:15:00+01:00, 20260105, 101500, +0100, 20260105101500+0100",
        "2026-01-05T10:15:00.25-03:30, 20260105, 101500.250000, -0330, 20260105101500.250000-0330",
        // DCMTK 3.6.7 calls +0000 an invalid value, so a time at UTC stands without offset
        "2026-01-05T10:15:00Z, 20260105, 101500, +0000, 20260105101500"
    })
    void writesAMomentInDicomsForms(String iso, String date, String time, String offset, String dateTime) {
        Timestamp stamp = new Timestamp(OffsetDateTime.parse(iso));
        assertThat(stamp.date()).isEqualTo(date);
        assertThat(stamp.timeOfDay()).isEqualTo(time);
        assertThat(stamp.offset()).isEqualTo(offset);
        assertThat(stamp.dateTime()).isEqualTo(dateTime);
    }

    @ParameterizedTest
    @CsvSource({"2026-01-05T10:15:00+01:00", "2026-12-31T23:59:59.000001-11:00", "2026-01-05T10:15:00Z"})
    void readsBackWhatItWrote(String iso) {
        OffsetDateTime time = OffsetDateTime.parse(iso);
        assertThat(Timestamp.parse(new Timestamp(time).dateTime(), ZoneOffset.UTC))
                .isEqualTo(time);
    }

    @Test
    void takesTheZoneOfTheDocumentWhereAValueHasNone() {
        assertThat(Timestamp.parse("20260105101500", ZoneOffset.ofHours(2)))
                .isEqualTo(OffsetDateTime.parse("2026-01-05T10:15:00+02:00"));
    }

    @Test
    void knowsWhatADicomTimeCannotHold() {
        assertThat(new Timestamp(OffsetDateTime.parse("2026-01-05T10:15:00.0000001Z")).isWhole())
                .isFalse();
        assertThat(new Timestamp(OffsetDateTime.parse("2026-01-05T10:15:00.000001Z")).isWhole())
                .isTrue();
    }
}
