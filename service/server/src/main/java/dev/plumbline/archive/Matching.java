// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import dev.plumbline.dicom.DicomJson;
import dev.plumbline.dicom.Tag;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * One condition of a search as a piece of SQL over the index and the values it binds; the text of the piece is ours,
 * what came from outside is only ever bound.
 *
 * <p>Source: DICOM PS3.4 C.2.2.2 (single value, list of UIDs, universal, wild card and range matching).
 */
record Matching(String sql, List<String> values) {
    private static final Pattern DATE = Pattern.compile("\\d{8}");
    private static final Pattern TIME = Pattern.compile("\\d{2}(\\d{2}(\\d{2}(\\.\\d{1,6})?)?)?");
    private static final Pattern NUMBER = Pattern.compile("[+-]?\\d{1,11}");
    private static final Pattern TRAILING_DELIMITERS = Pattern.compile("\\^+(?==|$)");
    private static final int LONGEST = 1024;
    private static final String EARLIEST_TIME = "000000.000000";
    private static final String LATEST_TIME = "235959.999999";

    Matching {
        values = List.copyOf(values);
    }

    /** Empty for universal matching: no value, or only asterisks. */
    static Optional<Matching> of(QueryAttribute attribute, String value) {
        if (value.isBlank() || value.chars().allMatch(c -> c == '*')) {
            return Optional.empty();
        }
        if (value.length() > LONGEST) {
            throw unreadable(attribute, "at most " + LONGEST + " characters");
        }
        return Optional.of(
                switch (attribute.kind()) {
                    case TEXT -> text(attribute.column(), value.strip());
                    case CODE -> anyCode(attribute.column(), value);
                    case NAME -> name(attribute, folded(value.strip()));
                    case UID -> anyOf(attribute, value);
                    case DATE -> range(attribute, value, DATE);
                    case TIME -> range(attribute, value, TIME);
                    case NUMBER -> number(attribute, value.strip());
                });
    }

    /** Of the study that an object belongs to, whichever of its objects the condition holds for. */
    Matching anywhereInStudy() {
        return new Matching("study_instance_uid IN (SELECT study_instance_uid FROM objects WHERE " + sql + ")", values);
    }

    /**
     * An identifier in an item of the Request Attributes Sequence, which the index keeps as DICOM JSON.
     *
     * <p>Source: DICOM PS3.4 C.2.2.2.6 (sequence matching): one item has to match.
     */
    static Optional<Matching> inRequest(int tag, String value) {
        if (value.isBlank() || value.chars().allMatch(c -> c == '*')) {
            return Optional.empty();
        }
        String item = "json_extract(item.value, '$.\"" + DicomJson.name(tag) + "\".Value[0]')";
        Matching inItem = text(item, value.strip());
        String items = "json_each(attributes, '$.\"" + DicomJson.name(Tag.REQUEST_ATTRIBUTES_SEQUENCE) + "\".Value')";
        return Optional.of(new Matching(
                "EXISTS (SELECT 1 FROM " + items + " AS item WHERE " + inItem.sql() + ")", inItem.values()));
    }

    private static Matching text(String column, String value) {
        boolean wild = value.contains("*") || value.contains("?");
        return wild
                ? new Matching(column + " GLOB ?", List.of(escaped(value)))
                : new Matching(column + " = ?", List.of(value));
    }

    private static Matching anyCode(String column, String value) {
        List<Matching> each = Arrays.stream(value.split("[,\\\\]"))
                .map(code -> text(column, code.strip()))
                .toList();
        return new Matching(
                each.stream().map(Matching::sql).collect(Collectors.joining(" OR ", "(", ")")),
                each.stream().flatMap(code -> code.values().stream()).toList());
    }

    /** Any component group may match; the index writes them as {@code =group=group=}. */
    private static Matching name(QueryAttribute attribute, String value) {
        return new Matching(attribute.column() + " GLOB ?", List.of("*=" + escaped(value) + "=*"));
    }

    private static String escaped(String value) {
        return value.replace("[", "[[]");
    }

    private static Matching anyOf(QueryAttribute attribute, String value) {
        List<String> uids =
                Arrays.stream(value.split("[,\\\\]")).map(String::strip).toList();
        uids.forEach(uid -> WireUid.require(uid, "A UID in the query"));
        String marks = uids.stream().map(uid -> "?").collect(Collectors.joining(", "));
        return new Matching(attribute.column() + " IN (" + marks + ")", uids);
    }

    private static Matching number(QueryAttribute attribute, String value) {
        if (!NUMBER.matcher(value).matches()) {
            throw unreadable(attribute, "a whole number");
        }
        return new Matching(attribute.column() + " = ?", List.of(canonicalNumber(value)));
    }

    private static Matching range(QueryAttribute attribute, String value, Pattern single) {
        String[] ends = value.strip().split("-", -1);
        boolean oneOrTwo = ends.length <= 2 && Arrays.stream(ends).anyMatch(end -> !end.isEmpty());
        boolean readable = oneOrTwo
                && Arrays.stream(ends)
                        .allMatch(end -> end.isEmpty() || single.matcher(end).matches());
        if (!readable) {
            throw unreadable(attribute, single == DATE ? "YYYYMMDD or a range of it" : "HHMMSS or a range of it");
        }
        String first = ends[0];
        String last = ends[ends.length - 1];
        List<String> conditions = new ArrayList<>();
        List<String> values = new ArrayList<>();
        if (!first.isEmpty()) {
            conditions.add(attribute.column() + " >= ?");
            values.add(single == DATE ? first : padded(first, EARLIEST_TIME));
        }
        if (!last.isEmpty()) {
            conditions.add(attribute.column() + " <= ?");
            values.add(single == DATE ? last : padded(last, LATEST_TIME));
        }
        // An object without the attribute is outside every range; the index holds an empty text for it.
        conditions.add(attribute.column() + " <> ''");
        return new Matching(String.join(" AND ", conditions), values);
    }

    private static String padded(String time, String pattern) {
        return time + pattern.substring(time.length());
    }

    private static Refusal unreadable(QueryAttribute attribute, String form) {
        return new Refusal(new Problem.InvalidValue(
                "", "The query's " + attribute.column() + " cannot be read.", "Write it as " + form + "."));
    }

    /** A value of an object as the index holds it, so that conditions can compare plain text. */
    static String indexed(QueryAttribute attribute, String value) {
        return switch (attribute.kind()) {
            case NAME -> value.isEmpty() ? "" : "=" + folded(value) + "=";
            case DATE -> value.replace(".", "");
            case TIME -> time(value);
            case NUMBER -> NUMBER.matcher(value).matches() ? canonicalNumber(value) : value;
            case TEXT, CODE, UID -> value;
        };
    }

    private static String time(String value) {
        String digits = value.replace(":", "");
        return TIME.matcher(digits).matches() ? padded(digits, EARLIEST_TIME) : digits;
    }

    private static String canonicalNumber(String value) {
        return Long.toString(Long.parseLong(value));
    }

    /** Without regard to case and to delimiters that end a component group with nothing. */
    private static String folded(String name) {
        return TRAILING_DELIMITERS
                .matcher(Normalizer.normalize(name, Normalizer.Form.NFC).toLowerCase(Locale.ROOT))
                .replaceAll("");
    }
}
