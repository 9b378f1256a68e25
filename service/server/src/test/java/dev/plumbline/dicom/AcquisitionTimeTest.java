// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.procedure.FrameClock;
import dev.plumbline.procedure.Happening;
import dev.plumbline.procedure.LoggedEvent;
import dev.plumbline.procedure.ProcedureLog;
import java.time.Duration;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class AcquisitionTimeTest {
    private static final LocalDateTime TEN = LocalDateTime.parse("2026-01-05T10:00:00");

    private static ProcedureLog puncturedAt(String time) {
        OffsetDateTime at = OffsetDateTime.parse(time);
        return ProcedureLog.stored(
                List.of(new LoggedEvent("e1", new Happening.Puncture(1), at, at, "Sample^Assistant", false)));
    }

    @Test
    void readsDateAndTimeInOneOrInTwo() {
        assertThat(AcquisitionTime.of(new DataSet().put(Tag.ACQUISITION_DATE_TIME, "20260105100000.5+0100"), "plan"))
                .contains(new FrameClock("plan", TEN.plusNanos(500_000_000), Optional.of(ZoneOffset.ofHours(1))));
        DataSet two = new DataSet()
                .put(Tag.CONTENT_DATE, "20260105")
                .put(Tag.CONTENT_TIME, "100000")
                .put(Tag.TIMEZONE_OFFSET_FROM_UTC, "-0500");
        assertThat(AcquisitionTime.of(two, "obs-1"))
                .contains(new FrameClock("obs-1", TEN, Optional.of(ZoneOffset.ofHours(-5))));
        two.put(Tag.ACQUISITION_DATE, "20260104").put(Tag.ACQUISITION_TIME, "100000");
        assertThat(AcquisitionTime.of(two, "obs-1")).map(FrameClock::acquired).contains(TEN.minusDays(1));
    }

    @Test
    void saysNothingWhereTheImageSaysNothing() {
        assertThat(AcquisitionTime.of(new DataSet(), "plan")).isEmpty();
        assertThat(AcquisitionTime.of(new DataSet().put(Tag.ACQUISITION_DATE, "20260105"), "plan"))
                .isEmpty();
        assertThat(AcquisitionTime.of(new DataSet().put(Tag.ACQUISITION_DATE_TIME, "20261305100000"), "plan"))
                .isEmpty();
    }

    /** A needle that is on a frame before it is in the skin shows that two clocks differ. */
    @Test
    void isHeldAgainstTheFirstPuncture() {
        ProcedureLog log = puncturedAt("2026-01-05T10:00:35+01:00");
        assertThat(new FrameClock("obs-1", TEN, Optional.empty()).sincePuncture(log))
                .contains(Duration.ofSeconds(-35));
        assertThat(new FrameClock("obs-1", TEN, Optional.of(ZoneOffset.UTC)).sincePuncture(log))
                .contains(Duration.ofSeconds(3565));
        assertThat(new FrameClock("obs-1", TEN, Optional.empty()).sincePuncture(ProcedureLog.EMPTY))
                .isEmpty();
    }
}
