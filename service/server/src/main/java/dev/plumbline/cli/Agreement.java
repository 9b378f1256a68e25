// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import dev.plumbline.review.BlandAltman;
import dev.plumbline.review.IntraclassCorrelation;
import dev.plumbline.review.TechnicalError;
import java.util.ArrayList;
import java.util.List;

/** How far the observers of a table agree: limits of agreement two by two, all correlations, the technical error. */
record Agreement(
        RatingFile ratings, List<Pair> pairs, List<IntraclassCorrelation> correlations, TechnicalError technicalError) {
    Agreement {
        pairs = List.copyOf(pairs);
        correlations = List.copyOf(correlations);
    }

    /** Limits of agreement of two observers, the first minus the second. */
    record Pair(String first, String second, BlandAltman limits) {}

    /**
     * Computes everything.
     *
     * @param multiple how many standard deviations the limits lie from the bias
     * @param level of all intervals, such as 0.95
     */
    static Agreement of(RatingFile ratings, double multiple, double level) {
        List<Pair> pairs = new ArrayList<>();
        List<String> names = ratings.observers();
        for (int i = 0; i < names.size(); i++) {
            for (int j = i + 1; j < names.size(); j++) {
                pairs.add(new Pair(names.get(i), names.get(j), BlandAltman.of(ratings.pair(i, j), multiple, level)));
            }
        }
        return new Agreement(
                ratings, pairs, IntraclassCorrelation.all(ratings.table(), level), TechnicalError.of(ratings.table()));
    }
}
