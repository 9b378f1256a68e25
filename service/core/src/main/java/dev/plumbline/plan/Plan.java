// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.Assumption;
import dev.plumbline.geometry.Doubt;
import dev.plumbline.geometry.Readings;
import java.util.List;

/** The intended path and everything derived from it. */
public sealed interface Plan permits InPlanePlan, OutOfPlanePlan {
    /** Who chose the path. */
    enum Source {
        STATED("stated"),
        PROPOSED("proposed");

        private final String word;

        Source(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    /**
     * Plans from calibrated frame, marks and limits.
     *
     * @throws dev.plumbline.problem.Refusal when the input cannot be used; what is merely impossible is a plan with {@link
     *     #feasible} false
     */
    static Plan of(PlanInput input) {
        return Planning.plan(input);
    }

    Source source();

    /** The path shown, or if proposed any path, fits the limits that were set, for what was marked. */
    boolean feasible();

    Readings<PlanQuantity> readings();

    Judgement judgement();

    List<WayOut> waysOut();

    /** The plan in rounded words. */
    String text();

    /**
     * What was judged and what was not.
     *
     * @param binding limits that forbid the path
     * @param unchecked limits that could not be judged because something was not stated
     */
    record Judgement(
            List<Limit> binding,
            List<Limit> unchecked,
            List<PlanNote> notes,
            List<Assumption> assumptions,
            List<Doubt> doubts) {
        public Judgement {
            binding = List.copyOf(binding);
            unchecked = List.copyOf(unchecked);
            notes = List.copyOf(notes);
            assumptions = List.copyOf(assumptions);
            doubts = List.copyOf(doubts);
        }
    }
}
