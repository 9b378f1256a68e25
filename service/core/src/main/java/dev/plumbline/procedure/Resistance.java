// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.procedure;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.math.BigDecimal;

/** Resistance to injection, in words or as a device read it; never judged. */
public sealed interface Resistance {
    /** As the hand felt it. */
    record Felt(Word word) implements Resistance {}

    /**
     * As a device showed it.
     *
     * @param unit as shown, {@code kPa} or {@code psi} or another; not converted
     * @param device which one, because devices read different places of the line
     */
    record Measured(BigDecimal value, String unit, String device) implements Resistance {
        /**
         * Checks the reading.
         *
         * @throws Refusal {@link Problem.InvalidValue} for a negative value, or one without unit or device
         */
        public Measured {
            if (value.signum() < 0 || unit.isBlank() || device.isBlank()) {
                throw new Refusal(new Problem.InvalidValue(
                        "/resistance",
                        "A measured resistance has a value from 0, its unit and its device.",
                        "Give all three, or say it in words."));
            }
        }
    }

    /** Words for what was felt. */
    enum Word {
        EASY("easy"),
        FIRM("firm"),
        COULD_NOT_INJECT("couldNotInject"),
        NOT_ASSESSED("notAssessed");

        private final String word;

        Word(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }
}
