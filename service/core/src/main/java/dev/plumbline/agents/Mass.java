// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.agents;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.math.BigDecimal;

/**
 * A mass in milligrams, exact; micrograms are its decimals.
 *
 * @param mg at least 0
 */
public record Mass(BigDecimal mg) implements Comparable<Mass> {
    public static final Mass NONE = new Mass(BigDecimal.ZERO);

    /**
     * Checks the amount.
     *
     * @throws Refusal {@link Problem.InvalidValue} for a negative mass
     */
    public Mass {
        Amounts.checkDigits(mg);
        if (mg.signum() < 0) {
            throw Amounts.refused("A mass of " + Amounts.plain(mg) + " mg cannot be.", "Give 0 mg or more.");
        }
        mg = mg.signum() == 0 ? BigDecimal.ZERO : mg.stripTrailingZeros();
    }

    public static Mass ofMg(String mg) {
        return new Mass(new BigDecimal(mg));
    }

    /** What a volume of a concentration holds; exact. */
    public static Mass in(Volume volume, Concentration concentration) {
        return new Mass(volume.ml().multiply(concentration.mgPerMl()));
    }

    public Mass plus(Mass other) {
        return new Mass(mg.add(other.mg));
    }

    public BigDecimal micrograms() {
        return mg.multiply(Amounts.THOUSAND);
    }

    /** Milligrams per kilogram, 34 digits; rounded only where it is shown. */
    public BigDecimal mgPerKg(BigDecimal kg) {
        return mg.divide(kg, Amounts.DIVISION);
    }

    @Override
    public int compareTo(Mass other) {
        return mg.compareTo(other.mg);
    }
}
