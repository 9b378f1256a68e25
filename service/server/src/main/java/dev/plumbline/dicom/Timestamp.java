// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.temporal.ChronoField;
import java.util.Locale;

/** A moment in DICOM's forms, DICOM PS3.5 6.2: DA, TM, DT and the offset from UTC. */
record Timestamp(OffsetDateTime time) {
    private static final int NANOS_PER_MICRO = 1000;
    private static final DateTimeFormatter DATE = DateTimeFormatter.ofPattern("uuuuMMdd", Locale.ROOT);
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HHmmss", Locale.ROOT);
    private static final DateTimeFormatter OFFSET = DateTimeFormatter.ofPattern("xx", Locale.ROOT);

    private static final DateTimeFormatter SECONDS = DateTimeFormatter.ofPattern("uuuuMMddHHmmss", Locale.ROOT);
    private static final DateTimeFormatter FRACTIONS = new DateTimeFormatterBuilder()
            .append(SECONDS)
            .appendFraction(ChronoField.NANO_OF_SECOND, 1, 6, true)
            .toFormatter(Locale.ROOT);

    String date() {
        return DATE.format(time);
    }

    /** To the microsecond where there are fractions of a second. */
    String timeOfDay() {
        int micros = time.getNano() / NANOS_PER_MICRO;
        return TIME.format(time) + (micros == 0 ? "" : String.format(Locale.ROOT, ".%06d", micros));
    }

    /** Such as {@code +0100}. */
    String offset() {
        return OFFSET.format(time);
    }

    /**
     * Date and time with the offset; without it at UTC, because DCMTK 3.6.7 calls {@code +0000} an invalid value and
     * drops the document. Timezone Offset From UTC (0008,0201) says it then.
     */
    String dateTime() {
        boolean utc = time.getOffset().equals(ZoneOffset.UTC);
        return date() + timeOfDay() + (utc ? "" : offset());
    }

    /** Whether a DICOM date and time can hold the moment without loss. */
    boolean isWhole() {
        return time.getNano() % NANOS_PER_MICRO == 0 && time.getOffset().getTotalSeconds() % 60 == 0;
    }

    /**
     * The moment that a date and time value names.
     *
     * @param zone where the value carries no offset of its own
     * @throws java.time.format.DateTimeParseException when it names none
     */
    static OffsetDateTime parse(String dateTime, ZoneOffset zone) {
        int sign = Math.max(dateTime.indexOf('+'), dateTime.indexOf('-'));
        String local = sign < 0 ? dateTime : dateTime.substring(0, sign);
        ZoneOffset offset = sign < 0 ? zone : ZoneOffset.of(dateTime.substring(sign));
        DateTimeFormatter form = local.contains(".") ? FRACTIONS : SECONDS;
        return LocalDateTime.parse(local, form).atOffset(offset);
    }
}
