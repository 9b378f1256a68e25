// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.review;

import java.util.List;
import java.util.Optional;

/**
 * Everything that tells how far observers agree who measured the same subjects.
 *
 * @param limits for exactly two observers
 * @param correlations all six forms, each with its name
 */
public record ObserverAgreement(
        Optional<BlandAltman> limits, List<IntraclassCorrelation> correlations, TechnicalError technicalError) {
    public ObserverAgreement {
        correlations = List.copyOf(correlations);
    }

    /** With limits at 1.96 standard deviations and intervals of the given level. */
    public static ObserverAgreement of(RatingTable table, double level) {
        Optional<BlandAltman> limits = table.observers() == 2
                ? Optional.of(BlandAltman.of(table, BlandAltman.NORMAL_95, level))
                : Optional.empty();
        return new ObserverAgreement(limits, IntraclassCorrelation.all(table, level), TechnicalError.of(table));
    }
}
