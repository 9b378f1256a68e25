// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.review;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How much of the spread of the values is spread between subjects rather than between observers. Six forms exist, and on
 * the same data they run from .17 to .91, so a value never stands without its form.
 *
 * <p>Source: Shrout and Fleiss, Psychol Bull 1979;86:420-428. Check values: {@code
 * external/shrout_fleiss_1979_results.csv}.
 *
 * @param subjects n
 * @param observers k
 * @param value at most 1, may be negative; empty where all values are equal, so that there is no spread to divide
 * @param interval empty where there is no value, no difference between observers, or no finite bound
 */
public record IntraclassCorrelation(
        Form form, int subjects, int observers, OptionalDouble value, Optional<ConfidenceInterval> interval) {
    /** The six forms: who rated (1 anybody, 2 observers drawn at random, 3 these very observers), one value or their mean. */
    public enum Form {
        ONE_WAY_SINGLE("ICC(1,1)", "each subject by other observers; one value"),
        RANDOM_SINGLE("ICC(2,1)", "observers drawn at random, absolute agreement; one value"),
        FIXED_SINGLE("ICC(3,1)", "these very observers, consistency; one value"),
        ONE_WAY_MEAN("ICC(1,k)", "each subject by other observers; mean of k values"),
        RANDOM_MEAN("ICC(2,k)", "observers drawn at random, absolute agreement; mean of k values"),
        FIXED_MEAN("ICC(3,k)", "these very observers, consistency; mean of k values");

        private final String word;
        private final String meaning;

        Form(String word, String meaning) {
            this.word = word;
            this.meaning = meaning;
        }

        /** As Shrout and Fleiss write it. */
        public String word() {
            return word;
        }

        public String meaning() {
            return meaning;
        }
    }

    /** All six, in the order of {@link Form}. */
    public static List<IntraclassCorrelation> all(RatingTable table, double level) {
        return Arrays.stream(Form.values()).map(form -> of(table, form, level)).toList();
    }

    /** One form with its interval of the given level. */
    public static IntraclassCorrelation of(RatingTable table, Form form, double level) {
        MeanSquares squares = MeanSquares.of(table);
        OptionalDouble value = value(squares, form);
        Optional<ConfidenceInterval> interval =
                value.isPresent() ? IntraclassBounds.of(squares, form, level) : Optional.empty();
        return new IntraclassCorrelation(form, squares.subjects(), squares.raters(), value, interval);
    }

    private static OptionalDouble value(MeanSquares m, Form form) {
        double k = m.raters();
        double n = m.subjects();
        double observerShare = (m.observers() - m.residual()) / n;
        return switch (form) {
            case ONE_WAY_SINGLE -> ratio(m.between() - m.within(), m.between() + (k - 1) * m.within());
            case RANDOM_SINGLE ->
                ratio(m.between() - m.residual(), m.between() + (k - 1) * m.residual() + k * observerShare);
            case FIXED_SINGLE -> ratio(m.between() - m.residual(), m.between() + (k - 1) * m.residual());
            case ONE_WAY_MEAN -> ratio(m.between() - m.within(), m.between());
            case RANDOM_MEAN -> ratio(m.between() - m.residual(), m.between() + observerShare);
            case FIXED_MEAN -> ratio(m.between() - m.residual(), m.between());
        };
    }

    /** Empty where the data hold no spread to divide by; rounding must not turn 0/0 into a number. */
    private static OptionalDouble ratio(double over, double under) {
        return under > 0 ? OptionalDouble.of(over / under) : OptionalDouble.empty();
    }
}
