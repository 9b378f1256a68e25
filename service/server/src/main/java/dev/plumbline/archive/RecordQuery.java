// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import dev.plumbline.document.NearestName;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Which records are looked for: all that meet every filter given.
 *
 * @param filters as the store compares them
 */
public record RecordQuery(Map<Filter, String> filters, int limit, int offset) {
    /** Rows of a page where nothing is said. */
    public static final int USUAL = 100;

    /** Rows of a page at most. */
    public static final int MOST = 1000;

    /** Rows of a table that is handed out whole, at most; a design choice. */
    public static final int WHOLE = 100_000;

    private static final List<String> PAGING = List.of("limit", "offset", "accept");

    public RecordQuery {
        filters = Map.copyOf(filters);
    }

    /** What can be asked for, under its name at every door. */
    public enum Filter {
        CASE_ID("caseId", "r.case_id = ?"),
        PATIENT("patient", "i.patient_id = ?"),
        FROM("from", "i.record_date >= ?"),
        TO("to", "i.record_date <= ?"),
        BLOCK("block", "i.block = ?"),
        OPERATOR("operator", "i.operator = ?"),
        LATERALITY("laterality", "i.laterality = ?"),
        STATE("state", "r.standing = ?"),
        CURRENT("current", "r.is_current = CAST(? AS INTEGER)"),
        DIFFERS("differs", "i.differs = CAST(? AS INTEGER)");

        private final String word;
        private final String condition;

        Filter(String word, String condition) {
            this.word = word;
            this.condition = condition;
        }

        public String word() {
            return word;
        }

        String condition() {
            return condition;
        }
    }

    /**
     * Reads a query.
     *
     * @param parameters by name, blank ones say nothing
     * @param usual rows where no limit is given
     * @param most rows at most
     * @throws Refusal for an unknown parameter or a value that it cannot have
     */
    public static RecordQuery of(Map<String, String> parameters, int usual, int most) {
        Map<Filter, String> filters = new EnumMap<>(Filter.class);
        parameters.forEach((name, value) -> {
            Optional<Filter> filter = Arrays.stream(Filter.values())
                    .filter(each -> each.word().equals(name))
                    .findFirst();
            if (filter.isEmpty() && !PAGING.contains(name)) {
                throw unknown(name);
            }
            if (!value.isBlank()) {
                filter.ifPresent(known -> filters.put(known, value(known, value.strip())));
            }
        });
        return new RecordQuery(
                filters, Math.min(number(parameters, "limit", usual), most), number(parameters, "offset", 0));
    }

    private static Refusal unknown(String name) {
        List<String> known =
                new ArrayList<>(Arrays.stream(Filter.values()).map(Filter::word).toList());
        known.addAll(List.of("limit", "offset"));
        String nearest = NearestName.of(name, known)
                .map(near -> "Did you mean " + near + "?")
                .orElse("Known are " + String.join(", ", known) + ".");
        return new Refusal(new Problem.InvalidValue("", "There is no such filter of records: " + name + ".", nearest));
    }

    private static String value(Filter filter, String text) {
        return switch (filter) {
            case FROM, TO -> day(filter, text);
            case OPERATOR -> text.toLowerCase(Locale.ROOT);
            case LATERALITY -> oneOf(filter, text, List.of("right", "left", "midline"));
            case STATE -> oneOf(filter, text, Standing.STATES);
            case CURRENT, DIFFERS ->
                oneOf(filter, text, List.of("true", "false")).equals("true") ? "1" : "0";
            case CASE_ID, PATIENT, BLOCK -> text;
        };
    }

    private static String day(Filter filter, String text) {
        try {
            return LocalDate.parse(text).toString();
        } catch (DateTimeParseException e) {
            throw refused(filter.word(), "Give a day such as 2026-01-05.");
        }
    }

    private static String oneOf(Filter filter, String text, List<String> words) {
        if (!words.contains(text)) {
            throw refused(filter.word(), "Give one of " + String.join(", ", words) + ".");
        }
        return text;
    }

    private static int number(Map<String, String> parameters, String name, int absent) {
        String text = parameters.getOrDefault(name, String.valueOf(absent));
        if (!text.matches("\\d{1,9}")) {
            throw new Refusal(new Problem.InvalidValue(
                    "", "The query parameter " + name + " must be a whole number.", "Give 0 or more."));
        }
        return Integer.parseInt(text);
    }

    private static Refusal refused(String name, String remedy) {
        return new Refusal(new Problem.InvalidValue("", "The filter " + name + " cannot have this value.", remedy));
    }
}
