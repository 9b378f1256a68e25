// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.agents;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What a limit may depend on. Ideal and lean weight are entered by whoever worked them out; nothing is computed here.
 *
 * @param ageYears completed years
 */
public record Patient(
        Optional<Weight> weight, Optional<BigDecimal> idealKg, Optional<BigDecimal> leanKg, OptionalInt ageYears) {
    public static final Patient UNKNOWN =
            new Patient(Optional.empty(), Optional.empty(), Optional.empty(), OptionalInt.empty());
}
