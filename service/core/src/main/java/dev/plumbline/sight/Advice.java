// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.sight;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/**
 * The next single action.
 *
 * @param step the rung of the ladder; empty where none is asked
 * @param signs what is there to stop at, gravest first
 * @param says action, reason, and what must not be done
 * @param hands what is moved and what is kept still; nothing where the ladder is left
 * @param magnitude where geometry or the site gives one; never a direction
 * @param passesLeft passes before it is handed over
 */
public record Advice(
        Kind kind,
        Optional<String> step,
        List<StopSign> signs,
        SightStep.Says says,
        Optional<SightStep.Hands> hands,
        Optional<Magnitude> magnitude,
        int passesLeft) {
    public Advice {
        signs = List.copyOf(signs);
    }

    /** What kind of answer it is. */
    public enum Kind {
        /** The tip is known. */
        CARRY_ON("carryOn"),
        /** One rung of the ladder. */
        STEP("step"),
        /** This pass is over: count it and begin the ladder again from the skin. */
        NEW_PASS("newPass"),
        /** A sign to stop is there; the ladder waits until it is gone. */
        STOP("stop"),
        /** Hand over, take another approach, or abandon: a normal end. */
        GIVE_UP("giveUp"),
        /** The patient is treated; the search is over. */
        TREAT("treat");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    /** How much. */
    public record Magnitude(Measure measure, BigDecimal value) {}
}
