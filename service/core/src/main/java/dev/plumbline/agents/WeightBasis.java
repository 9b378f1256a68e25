// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.agents;

import java.math.BigDecimal;
import java.util.Optional;

/** Which weight a limit per kilogram is multiplied with. */
public enum WeightBasis {
    ACTUAL("actual"),
    IDEAL("ideal"),
    LEAN("lean"),
    /** The actual weight, but no more than the row's cap. */
    CAPPED("capped");

    private final String word;

    WeightBasis(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }

    /** Kilograms to multiply with; empty where they were not entered. */
    Optional<BigDecimal> of(Patient patient, Optional<BigDecimal> capKg) {
        return switch (this) {
            case ACTUAL -> patient.weight().map(Weight::kg);
            case IDEAL -> patient.idealKg();
            case LEAN -> patient.leanKg();
            case CAPPED -> patient.weight().map(Weight::kg).map(kg -> kg.min(capKg.orElse(kg)));
        };
    }
}
