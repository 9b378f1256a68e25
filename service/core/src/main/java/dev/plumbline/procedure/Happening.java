// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.procedure;

import dev.plumbline.agents.Volume;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.sight.Seen;
import dev.plumbline.sight.StopSign;
import java.util.Optional;

/** One thing that happened. */
public sealed interface Happening {
    /** The two-person check before a puncture. */
    record Stopped(StopMoment moment, int punctureSite) implements Happening {}

    /** The needle goes through the skin; begins a pass. */
    record Puncture(int punctureSite) implements Happening {}

    /** The needle's direction is changed without leaving the skin. */
    record Redirection() implements Happening {}

    /** A further way forward after withdrawing to just under the skin. */
    record Pass() implements Happening {}

    /**
     * What of the needle was seen, and which rung was taken.
     *
     * @param step of the ladder; empty where only the view was noted
     */
    record Sight(Seen seen, Optional<String> step) implements Happening {}

    /** Colour or power Doppler was looked at. */
    record Doppler(Optional<String> finding) implements Happening {}

    record Aspiration(boolean blood) implements Happening {}

    /**
     * Fluid was injected. What nobody said about it is absent.
     *
     * @param fluid in words, for one that is no agent of the case
     * @param agentId of the agent, or the mixture of agents, in the case
     * @param hydrolocation to find the tip
     */
    record Aliquot(
            Volume volume,
            Optional<String> fluid,
            Optional<String> agentId,
            boolean hydrolocation,
            Optional<Spread> spread,
            Optional<Resistance> resistance,
            Optional<Pain> pain)
            implements Happening {
        /**
         * Checks that something was injected.
         *
         * @throws Refusal for no volume or an unnamed fluid
         */
        public Aliquot {
            if (volume.ml().signum() == 0) {
                throw new Refusal(new Problem.InvalidValue(
                        "/volumeMl", "An injection of nothing is none.", "Give a volume above 0 mL, or leave it out."));
            }
            if (fluid.filter(name -> !name.isBlank()).isEmpty() && agentId.isEmpty()) {
                throw new Refusal(new Problem.MissingField("/fluid", "Name the fluid, or give the agent of the case."));
            }
        }
    }

    /**
     * Needling or injecting was stopped.
     *
     * @param sign at which; empty where it was stopped for something else
     */
    record Halt(Optional<StopSign> sign, Optional<String> reason) implements Happening {
        boolean endsTheSearch() {
            return sign.filter(StopSign::endsTheSearch).isPresent();
        }
    }

    /** The plan was changed on purpose. */
    record PlanChanged(String reason) implements Happening {
        /**
         * Checks the reason.
         *
         * @throws Refusal {@link Problem.MissingField} without one
         */
        public PlanChanged {
            if (reason.isBlank()) {
                throw new Refusal(new Problem.MissingField("/reason", "Say why the plan was changed."));
            }
        }
    }

    /** What a stop moment speaks of has changed since. */
    record ContextChanged(What what) implements Happening {
        /** What changed. */
        public enum What {
            POSITION("position"),
            BLOCK("block"),
            SIDE("side");

            private final String word;

            What(String word) {
                this.word = word;
            }

            public String word() {
                return word;
            }
        }
    }

    record NeedleOut() implements Happening {}

    /**
     * A complication was noticed.
     *
     * @param code word of the site's list
     */
    record Complication(String code, Optional<String> text) implements Happening {}

    /** Somebody looked for complications up to this moment and noticed none. */
    record LookedForComplications(String by) implements Happening {}

    record NearMiss(String text) implements Happening {}

    /** Somebody else goes on. */
    record HandOver(String to) implements Happening {}

    /**
     * An earlier entry does not stand as it is.
     *
     * @param corrects id of the earlier event
     * @param instead what stands in its place; empty when the entry should not have been made
     */
    record Correction(String corrects, Optional<Happening> instead, Optional<String> reason) implements Happening {
        /**
         * Checks that a correction puts a happening in place. A reason is welcome and not demanded: taking back a wrong
         * touch must cost one touch.
         *
         * @throws Refusal for a correction inside a correction
         */
        public Correction {
            if (instead.filter(Correction.class::isInstance).isPresent()) {
                throw new Refusal(new Problem.InvalidValue(
                        "/instead", "A correction cannot stand in the place of an event.", "Give what happened."));
            }
        }
    }
}
