// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.agents;

import java.math.BigDecimal;

/** A concentration in the form and the figures in which the label prints it. */
public record Labelled(BigDecimal value, Form form) {
    /**
     * Checks that it is a concentration.
     *
     * @throws dev.plumbline.problem.Refusal for nothing, less than nothing, or more drug than solution
     */
    public Labelled {
        of(value, form);
        value = Amounts.shortest(value);
    }

    /** How a label says it. */
    public enum Form {
        PERCENT("percent"),
        MG_PER_ML("mgPerMl"),
        MICROGRAMS_PER_ML("microgramsPerMl"),
        /** 1 g in so many millilitres, as epinephrine is labelled. */
        ONE_IN("oneIn");

        private final String word;

        Form(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    public Concentration concentration() {
        return of(value, form);
    }

    private static Concentration of(BigDecimal value, Form form) {
        Amounts.checkDigits(value);
        return switch (form) {
            case PERCENT -> Concentration.percent(value);
            case MG_PER_ML -> new Concentration(value);
            case MICROGRAMS_PER_ML -> new Concentration(value.movePointLeft(3));
            case ONE_IN -> Concentration.oneIn(value.signum() > 0 ? value.longValue() : 0);
        };
    }
}
