// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.dicom.ItemValue.Moment;
import java.time.DateTimeException;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Times in the tree. They stand without an offset, in the record's Timezone Offset From UTC: DCMTK 3.6.7 calls {@code +0000}
 * an invalid value and drops the document. A time stated in another zone, or finer than a microsecond, also stands as the
 * text it was stated in, and is read from there.
 */
record RecordTimes(ZoneOffset zone) {
    private static final Code STATED = Codes.own("TIME-STATED");
    private static final DateTimeFormatter ISO = DateTimeFormatter.ISO_OFFSET_DATE_TIME;

    /** Of a report that was read. */
    static RecordTimes of(DataSet report) {
        try {
            return new RecordTimes(report.string(Tag.TIMEZONE_OFFSET_FROM_UTC)
                    .map(ZoneOffset::of)
                    .orElse(ZoneOffset.UTC));
        } catch (DateTimeException e) {
            throw Fault.malformed("The offset from UTC (0008,0201) is none");
        }
    }

    /** In the record's zone, without the offset. */
    String text(OffsetDateTime time) {
        Timestamp here = new Timestamp(time.withOffsetSameInstant(zone));
        return here.date() + here.timeOfDay();
    }

    /** The item at the time of a field, which it must have. */
    ContentItem at(ContentItem item, JsonNode stated, String field) {
        OffsetDateTime time = OffsetDateTime.parse(stated.get(field).asText());
        return item.observedAt(text(time)).and(asStated(time, STATED));
    }

    /** Puts the time of an item. */
    void read(ContentItem item, ObjectNode stated, String field) {
        item.textOf(STATED).or(() -> item.observedAt().map(this::iso)).ifPresent(time -> stated.put(field, time));
    }

    /** A field as DATETIME, and as text where that would lose something. */
    FieldItem moment(String field, Code concept, Code exact) {
        return new FieldItem(
                (stated, items) -> {
                    OffsetDateTime time = OffsetDateTime.parse(stated.get(field).asText());
                    items.add(moment(Relation.HAS_PROPERTIES, concept, time));
                    items.addAll(asStated(time, exact));
                },
                (holder, stated) -> holder.textOf(exact)
                        .or(() -> holder.first(concept)
                                .flatMap(item -> item.value() instanceof Moment moment
                                        ? Optional.of(iso(moment.text()))
                                        : Optional.empty()))
                        .ifPresent(time -> stated.put(field, time)));
    }

    ContentItem moment(Relation relation, Code concept, OffsetDateTime time) {
        return ContentItem.of(relation, concept, new Moment("DATETIME", text(time)));
    }

    private List<ContentItem> asStated(OffsetDateTime time, Code concept) {
        List<ContentItem> items = new ArrayList<>();
        if (!time.getOffset().equals(zone) || !new Timestamp(time).isWhole()) {
            items.add(ContentItem.text(Relation.HAS_PROPERTIES, concept, ISO.format(time)));
        }
        return items;
    }

    private String iso(String dateTime) {
        try {
            return ISO.format(Timestamp.parse(dateTime, zone));
        } catch (DateTimeException e) {
            throw Fault.malformed("The time " + dateTime + " in the content tree is no date and time");
        }
    }
}
