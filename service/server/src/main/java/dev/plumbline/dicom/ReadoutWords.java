// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.dicom.ItemValue.Measured;
import dev.plumbline.dicom.ItemValue.Moment;
import dev.plumbline.readout.PersonName;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * Names, numbers and times of one record as people read them. Times are at the record's offset from UTC, which its head says
 * once; their date is said where it is not the record's.
 */
final class ReadoutWords {
    private static final int DATE = 8;
    private static final int DATE_AND_TIME = 14;
    /** For what was computed; what was stated stands figure by figure. Source: design choice. */
    private static final MathContext FOUR_DIGITS = new MathContext(4, RoundingMode.HALF_EVEN);

    /** Units that have a plural or are no word: one of it, several of it. */
    private static final Map<String, List<String>> UNITS = Map.of(
            "a", List.of("year", "years"),
            "{passes}", List.of("pass", "passes"),
            "{pixels}", List.of("pixel", "pixels"));

    private final String recordDate;

    private ReadoutWords(String recordDate) {
        this.recordDate = recordDate;
    }

    static ReadoutWords of(DataSet report) {
        return new ReadoutWords(report.string(Tag.CONTENT_DATE).orElse(""));
    }

    /** Hours, minutes and seconds of a DICOM date and time, after its date where that is not the record's. */
    String clock(String dateTime) {
        if (dateTime.length() < DATE_AND_TIME) {
            return dateTime;
        }
        String time = time(dateTime.substring(DATE, DATE_AND_TIME));
        String date = dateTime.substring(0, DATE);
        return date.equals(recordDate) ? time : day(date) + " " + time;
    }

    /** Such as 10:15:00; what is no time as it is. */
    static String time(String timeOfDay) {
        return timeOfDay.length() < 6
                ? timeOfDay
                : timeOfDay.substring(0, 2) + ":" + timeOfDay.substring(2, 4) + ":" + timeOfDay.substring(4, 6);
    }

    /** Such as 2026-01-05; what is no date as it is. */
    static String day(String date) {
        return date.length() == DATE
                ? date.substring(0, 4) + "-" + date.substring(4, 6) + "-" + date.substring(6)
                : date;
    }

    /** Such as UTC+01:00. */
    static String zone(String offset) {
        return offset.length() == 5 ? "UTC" + offset.substring(0, 3) + ":" + offset.substring(3) : "UTC" + offset;
    }

    /** A number that was stated, as it was stated. */
    static String stated(Measured measured) {
        return withUnit(measured.decimal(), measured);
    }

    /** A number that was computed, to four digits. */
    static String computed(Measured measured) {
        BigDecimal rounded = new BigDecimal(measured.decimal()).round(FOUR_DIGITS);
        String figures =
                rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
        return withUnit(figures, measured);
    }

    private static String withUnit(String figures, Measured measured) {
        if (measured.unit().means(Codes.ucum("1"))) {
            return figures;
        }
        List<String> forms = UNITS.get(measured.unit().value());
        if (forms == null) {
            return figures + " " + measured.unit().meaning();
        }
        return figures + " " + forms.get(measured.value() == 1 ? 0 : 1);
    }

    static String name(ContentItem item) {
        return item.name().map(Code::meaning).orElse(item.value().valueType());
    }

    /** The value alone. */
    String said(ContentItem item) {
        ItemValue value = item.value();
        if (value instanceof ItemValue.Coded coded) {
            return coded.code().meaning();
        }
        if (value instanceof ItemValue.Text text) {
            return text.text();
        }
        if (value instanceof ItemValue.Person person) {
            return PersonName.words(person.name());
        }
        if (value instanceof Moment moment) {
            return clock(moment.text());
        }
        return FieldItem.measured(item).map(ReadoutWords::stated).orElse("no value");
    }

    /** When what an item says was. */
    String when(ContentItem item) {
        return item.observedAt().map(this::clock).orElse("time not stated");
    }

    /** The values of children with these names, in this order. */
    List<String> under(ContentItem item, Code... concepts) {
        List<String> said = new ArrayList<>();
        for (Code concept : concepts) {
            item.named(concept).map(this::said).forEach(said::add);
        }
        return said;
    }
}
