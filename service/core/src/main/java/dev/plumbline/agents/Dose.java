// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.agents;

import java.time.OffsetDateTime;
import java.util.Optional;

/**
 * One amount of one drug that counts in the budget of a session.
 *
 * @param at when it was or will be given
 * @param vasoconstrictor whether its solution holds one
 */
public record Dose(
        String drug,
        Basis basis,
        Mass mass,
        boolean vasoconstrictor,
        Route route,
        Optional<String> technique,
        Purpose purpose,
        OffsetDateTime at) {
    /** What it was for; everything counts, whoever gave it. */
    public enum Purpose {
        BLOCK("block"),
        SKIN_INFILTRATION("skinInfiltration"),
        HYDROLOCATION("hydrolocation"),
        OTHER_TODAY("otherToday");

        private final String word;

        Purpose(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    /** What a volume of an entry amounts to. */
    public static Dose of(AgentUse use, Volume volume, OffsetDateTime at) {
        return new Dose(
                use.agent().drug(),
                use.agent().basis(),
                Mass.in(volume, use.agent().concentration()),
                use.agent().hasEpinephrine(),
                use.route(),
                use.technique(),
                use.purpose(),
                at);
    }
}
