// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.agents;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.math.BigDecimal;

/**
 * Mass of a drug per volume, of the salt or the base as it is labelled, never converted.
 *
 * <p>Source: 1 % is 1 g in 100 mL, that is 10 mg/mL (per cent weight in volume); 1 : n is 1 g in n mL (elementary; epinephrine
 * 1 : 200 000 = 5 micrograms/mL as labels of local anaesthetics print it).
 *
 * @param mgPerMl above 0, at most 1000
 */
public record Concentration(BigDecimal mgPerMl) {
    private static final BigDecimal MG_PER_ML_IN_ONE_PERCENT = BigDecimal.TEN;
    private static final BigDecimal MOST_MG_PER_ML = Amounts.THOUSAND;
    private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);

    /**
     * Checks the amount.
     *
     * @throws Refusal {@link Problem.InvalidValue} for nothing, less than nothing, or more drug than solution
     */
    public Concentration {
        Amounts.checkDigits(mgPerMl);
        if (mgPerMl.signum() <= 0 || mgPerMl.compareTo(MOST_MG_PER_ML) > 0) {
            throw Amounts.refused(
                    "A concentration of " + Amounts.plain(mgPerMl) + " mg/mL cannot be.",
                    "Give more than 0 and at most 1000 mg/mL.");
        }
        mgPerMl = mgPerMl.stripTrailingZeros();
    }

    public static Concentration mgPerMl(String value) {
        return new Concentration(new BigDecimal(value));
    }

    /**
     * From per cent weight in volume.
     *
     * @throws Refusal {@link Problem.InvalidValue} unless above 0 and at most 100
     */
    public static Concentration percent(BigDecimal percent) {
        if (percent.signum() <= 0 || percent.compareTo(HUNDRED) > 0) {
            throw Amounts.refused(
                    Amounts.plain(percent) + " % is no concentration.", "Give more than 0 and at most 100 %.");
        }
        return new Concentration(percent.multiply(MG_PER_ML_IN_ONE_PERCENT));
    }

    public static Concentration percent(String value) {
        return percent(new BigDecimal(value));
    }

    public static Concentration microgramsPerMl(String value) {
        return new Concentration(new BigDecimal(value).movePointLeft(3));
    }

    /** One part in so many, as epinephrine is labelled: 1 g in n mL. */
    public static Concentration oneIn(long parts) {
        if (parts < 1) {
            throw Amounts.refused("1 in " + parts + " is no concentration.", "Give for example 1 in 200000.");
        }
        return new Concentration(Amounts.THOUSAND.divide(BigDecimal.valueOf(parts), Amounts.DIVISION));
    }

    public BigDecimal percent() {
        return mgPerMl.divide(MG_PER_ML_IN_ONE_PERCENT, Amounts.DIVISION);
    }

    public BigDecimal microgramsPerMl() {
        return mgPerMl.multiply(Amounts.THOUSAND);
    }
}
