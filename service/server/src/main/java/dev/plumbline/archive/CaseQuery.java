// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import dev.plumbline.document.NearestName;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Which unfinished cases are looked for: those that meet every filter given.
 *
 * @param from first day on which the case last changed, by the service's own clock
 * @param to last such day
 * @param operator in any case of letters
 */
public record CaseQuery(
        Optional<String> patient,
        Optional<LocalDate> from,
        Optional<LocalDate> to,
        Optional<String> block,
        Optional<String> operator,
        int limit,
        int offset) {
    /** Rows of a page where nothing is said. */
    private static final int USUAL = 100;

    private static final int MOST = 1000;

    private static final List<String> KNOWN =
            List.of("patient", "from", "to", "block", "operator", "limit", "offset", "accept");

    /**
     * Reads a query.
     *
     * @param parameters by name, blank ones say nothing
     * @throws Refusal for an unknown parameter or a value that it cannot have
     */
    public static CaseQuery of(Map<String, String> parameters) {
        for (String name : parameters.keySet()) {
            if (!KNOWN.contains(name)) {
                throw unknown(name);
            }
        }
        return new CaseQuery(
                text(parameters, "patient"),
                day(parameters, "from"),
                day(parameters, "to"),
                text(parameters, "block"),
                text(parameters, "operator"),
                Math.min(number(parameters, "limit", USUAL), MOST),
                number(parameters, "offset", 0));
    }

    /** Whether a row of the list is one of those that are looked for. */
    boolean meets(UnfinishedCase row, ZoneId zone) {
        LocalDate day = row.changed().atZone(zone).toLocalDate();
        return patient.filter(wanted -> !row.patientId().equals(Optional.of(wanted)))
                        .isEmpty()
                && from.filter(day::isBefore).isEmpty()
                && to.filter(day::isAfter).isEmpty()
                && block.filter(wanted -> !row.context().block().equals(Optional.of(wanted)))
                        .isEmpty()
                && operator.filter(wanted -> !needledBy(row, wanted)).isEmpty();
    }

    private static boolean needledBy(UnfinishedCase row, String wanted) {
        return row.context()
                .operator()
                .filter(person -> person.name().equalsIgnoreCase(wanted))
                .isPresent();
    }

    private static Optional<String> text(Map<String, String> parameters, String name) {
        return Optional.ofNullable(parameters.get(name)).map(String::strip).filter(text -> !text.isEmpty());
    }

    private static Optional<LocalDate> day(Map<String, String> parameters, String name) {
        try {
            return text(parameters, name).map(LocalDate::parse);
        } catch (DateTimeParseException e) {
            throw new Refusal(new Problem.InvalidValue(
                    "", "The filter " + name + " cannot have this value.", "Give a day such as 2026-01-05."));
        }
    }

    private static int number(Map<String, String> parameters, String name, int absent) {
        String text = text(parameters, name).orElse(String.valueOf(absent));
        if (!text.matches("\\d{1,9}")) {
            throw new Refusal(new Problem.InvalidValue(
                    "", "The query parameter " + name + " must be a whole number.", "Give 0 or more."));
        }
        return Integer.parseInt(text);
    }

    private static Refusal unknown(String name) {
        String remedy = NearestName.of(name, KNOWN)
                .map(near -> "Did you mean " + near + "?")
                .orElse("Known are patient, from, to, block, operator, limit and offset.");
        return new Refusal(new Problem.InvalidValue("", "There is no such filter of cases: " + name + ".", remedy));
    }
}
