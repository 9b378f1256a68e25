// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.agents;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.math.BigDecimal;
import java.util.Optional;

/**
 * The patient's body weight and where it comes from.
 *
 * @param kg from 0.3 to 500 (a design choice that only catches slips)
 */
public record Weight(BigDecimal kg, Source source) {
    private static final BigDecimal LEAST_KG = new BigDecimal("0.3");
    private static final BigDecimal MOST_KG = BigDecimal.valueOf(500);

    /** Exactly. Source: international avoirdupois pound, elementary. */
    private static final BigDecimal KG_IN_A_POUND = new BigDecimal("0.45359237");

    /** Body mass index outside which the pair of weight and height is questioned, kg/m2; design choice, no source. */
    private static final BigDecimal LEAST_BMI = BigDecimal.valueOf(12);

    private static final BigDecimal MOST_BMI = BigDecimal.valueOf(60);

    /** Two weights of one patient farther apart than this factor are questioned; design choice, no source. */
    private static final BigDecimal MOST_CHANGE = new BigDecimal("1.5");

    /** Where a weight comes from. */
    public enum Source {
        MEASURED("measured"),
        ESTIMATED("estimated"),
        REPORTED("reported");

        private final String word;

        Source(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    /** What is odd about a weight. */
    public enum Doubt {
        MAY_BE_TEN_FOLD_TOO_HIGH("mayBeTenFoldTooHigh"),
        MAY_BE_TEN_FOLD_TOO_LOW("mayBeTenFoldTooLow"),
        MAY_BE_POUNDS("mayBePounds"),
        DOES_NOT_FIT("doesNotFit");

        private final String word;

        Doubt(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    /**
     * Checks the weight.
     *
     * @throws Refusal {@link Problem.InvalidValue} for a weight no patient has
     */
    public Weight {
        Amounts.checkDigits(kg);
        if (kg.compareTo(LEAST_KG) < 0 || kg.compareTo(MOST_KG) > 0) {
            throw new Refusal(new Problem.InvalidValue(
                    "/weight/kg",
                    "A patient of " + Amounts.plain(kg) + " kg cannot be.",
                    "Give the weight in kilograms, from 0.3 to 500."));
        }
    }

    /** A question about the weight beside the height in centimetres, for adults; empty where the two fit. */
    public Optional<Doubt> doubtBesideHeight(BigDecimal heightCm) {
        BigDecimal metres = heightCm.movePointLeft(2);
        BigDecimal square = metres.multiply(metres);
        return doubt(LEAST_BMI.multiply(square), MOST_BMI.multiply(square));
    }

    /** A question about the weight beside an earlier one of the same patient; empty where the two fit. */
    public Optional<Doubt> doubtBeside(Weight earlier) {
        return doubt(earlier.kg.divide(MOST_CHANGE, Amounts.DIVISION), earlier.kg.multiply(MOST_CHANGE));
    }

    private Optional<Doubt> doubt(BigDecimal low, BigDecimal high) {
        if (within(kg, low, high)) {
            return Optional.empty();
        }
        if (within(kg.multiply(KG_IN_A_POUND), low, high)) {
            return Optional.of(Doubt.MAY_BE_POUNDS);
        }
        if (within(kg.movePointLeft(1), low, high)) {
            return Optional.of(Doubt.MAY_BE_TEN_FOLD_TOO_HIGH);
        }
        return Optional.of(
                within(kg.movePointRight(1), low, high) ? Doubt.MAY_BE_TEN_FOLD_TOO_LOW : Doubt.DOES_NOT_FIT);
    }

    private static boolean within(BigDecimal kg, BigDecimal low, BigDecimal high) {
        return low.compareTo(kg) <= 0 && kg.compareTo(high) <= 0;
    }
}
