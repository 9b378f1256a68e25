// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.agents;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.math.BigDecimal;

/**
 * A volume in millilitres, exact; 0 is a volume. Two are equal when their amounts are, however they were written.
 *
 * @param ml from 0 to 500 (the upper bound is a design choice that only catches slips)
 */
public record Volume(BigDecimal ml) implements Comparable<Volume> {
    private static final BigDecimal MOST_ML = BigDecimal.valueOf(500);

    public static final Volume NONE = new Volume(BigDecimal.ZERO);

    /**
     * Checks the amount.
     *
     * @throws Refusal {@link Problem.InvalidValue} for a negative or absurd volume
     */
    public Volume {
        Amounts.checkDigits(ml);
        if (ml.signum() < 0 || ml.compareTo(MOST_ML) > 0) {
            throw Amounts.refused(
                    "A volume of " + Amounts.plain(ml) + " mL cannot be.", "Give 0 to 500 mL in one figure.");
        }
        ml = ml.signum() == 0 ? BigDecimal.ZERO : ml.stripTrailingZeros();
    }

    public static Volume ofMl(String ml) {
        return new Volume(new BigDecimal(ml));
    }

    public Volume plus(Volume other) {
        return new Volume(ml.add(other.ml));
    }

    @Override
    public int compareTo(Volume other) {
        return ml.compareTo(other.ml);
    }
}
