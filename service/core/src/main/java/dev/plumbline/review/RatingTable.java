// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.review;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.util.List;

/**
 * What several observers measured on the same subjects (frames, say): one row per subject, one column per observer, no
 * gaps, all in one unit. For repeated measurement by one person the columns are the repeats.
 */
public final class RatingTable {
    private final List<List<Double>> rows;

    private RatingTable(List<List<Double>> rows) {
        this.rows = rows;
    }

    /**
     * Takes rows of equal length.
     *
     * @throws Refusal {@link Problem.InvalidValue} for fewer than 2 subjects or 2 observers, gaps or infinite numbers
     */
    public static RatingTable of(List<? extends List<Double>> rows) {
        List<List<Double>> copy = rows.stream().map(row -> List.copyOf(row)).toList();
        if (copy.size() < 2) {
            throw refused("", copy.size() + " subjects are too few to compare observers.", "Give two or more.");
        }
        int observers = copy.get(0).size();
        if (observers < 2) {
            throw refused("/0", "One observer cannot be compared with nobody.", "Give two or more columns.");
        }
        for (int subject = 0; subject < copy.size(); subject++) {
            check(copy.get(subject), observers, subject);
        }
        return new RatingTable(copy);
    }

    private static void check(List<Double> row, int observers, int subject) {
        if (row.size() != observers) {
            throw refused(
                    "/" + subject,
                    "This row has " + row.size() + " values where the first has " + observers + ".",
                    "Leave out subjects that not every observer measured.");
        }
        for (int observer = 0; observer < observers; observer++) {
            if (!Double.isFinite(row.get(observer))) {
                throw refused("/" + subject + "/" + observer, "This is not a finite number.", "Give a number.");
            }
        }
    }

    private static Refusal refused(String pointer, String detail, String remedy) {
        return new Refusal(new Problem.InvalidValue(pointer, detail, remedy));
    }

    public int subjects() {
        return rows.size();
    }

    public int observers() {
        return rows.get(0).size();
    }

    public double at(int subject, int observer) {
        return rows.get(subject).get(observer);
    }

    double meanOfSubject(int subject) {
        return rows.get(subject).stream().mapToDouble(x -> x).average().orElseThrow();
    }

    double meanOfObserver(int observer) {
        return rows.stream().mapToDouble(row -> row.get(observer)).average().orElseThrow();
    }

    double mean() {
        return rows.stream().flatMap(List::stream).mapToDouble(x -> x).average().orElseThrow();
    }
}
