// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.procedure;

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
        public Measured {
            if (value.signum() < 0 || unit.isBlank() || device.isBlank()) {
                throw new IllegalArgumentException(
                        "A measured resistance has a value from 0, its unit and its device.");
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
