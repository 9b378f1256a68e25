// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.procedure.FrameClock;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.FrameRef;
import dev.plumbline.record.ObservedFrame;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** When an image was acquired, by the scanner's clock. Source: DICOM PS3.3 C.7.6.1, C.12.1.1.3 for the offset. */
public final class AcquisitionTime {
    private static final int SECONDS = 6;

    private AcquisitionTime() {}

    /**
     * As the image says it, the first of acquisition date and time in one, in two, content date and time.
     *
     * @param frame what the case calls the frame
     * @return empty where the image says none that can be read
     */
    public static Optional<FrameClock> of(DataSet header, String frame) {
        return header.string(Tag.ACQUISITION_DATE_TIME)
                .or(() -> joined(header, Tag.ACQUISITION_DATE, Tag.ACQUISITION_TIME))
                .or(() -> joined(header, Tag.CONTENT_DATE, Tag.CONTENT_TIME))
                .map(String::strip)
                .flatMap(text -> clock(text, zone(header), frame));
    }

    /**
     * Of every frame of a case that says one, the planned one first.
     *
     * @param headers of the frames that can be read
     */
    public static List<FrameClock> all(CaseDocument document, Function<FrameRef, Optional<DataSet>> headers) {
        List<FrameClock> clocks = new ArrayList<>();
        headers.apply(document.frame()).flatMap(header -> of(header, "plan")).ifPresent(clocks::add);
        for (ObservedFrame observed : document.observations()) {
            headers.apply(observed.frame())
                    .flatMap(header -> of(header, observed.marks().id()))
                    .ifPresent(clocks::add);
        }
        return clocks;
    }

    private static Optional<String> joined(DataSet header, int date, int time) {
        return CurrentForm.value(header, date)
                .flatMap(day -> CurrentForm.value(header, time)
                        .filter(clock -> clock.length() >= SECONDS)
                        .map(clock -> day + clock));
    }

    private static Optional<FrameClock> clock(String text, Optional<ZoneOffset> zone, String frame) {
        boolean ownZone = text.indexOf('+') >= 0 || text.indexOf('-') >= 0;
        try {
            OffsetDateTime moment = Timestamp.parse(text, ZoneOffset.UTC);
            LocalDateTime local = moment.toLocalDateTime();
            return Optional.of(new FrameClock(frame, local, ownZone ? Optional.of(moment.getOffset()) : zone));
        } catch (DateTimeException e) {
            // A date that is none says nothing about the clock; the frame itself stays as good as it was.
            return Optional.empty();
        }
    }

    private static Optional<ZoneOffset> zone(DataSet header) {
        try {
            return header.string(Tag.TIMEZONE_OFFSET_FROM_UTC)
                    .map(String::strip)
                    .map(ZoneOffset::of);
        } catch (DateTimeException e) {
            // As above: an offset that is none is not stated.
            return Optional.empty();
        }
    }
}
