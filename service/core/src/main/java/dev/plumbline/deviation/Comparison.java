// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.deviation;

import dev.plumbline.observation.Observation;
import dev.plumbline.observation.ObservationInput;
import dev.plumbline.plan.Plan;
import dev.plumbline.plan.PlanInput;
import java.util.List;

/** A plan, what was observed, and how each observation differs from the plan, in the order of the observations. */
public record Comparison(Plan plan, List<Observation> observations, List<Deviation> deviations) {
    public Comparison {
        observations = List.copyOf(observations);
        deviations = List.copyOf(deviations);
    }

    /**
     * Plans, measures every observation and compares it with the plan; the uncertainties count what they share.
     *
     * @throws dev.plumbline.problem.Refusal when the input cannot be used
     */
    public static Comparison of(PlanInput input, List<ObservationInput> observed) {
        return Comparing.compare(input, observed);
    }

    /**
     * The plan alone, the same as {@link #of} has it beside the observations: where nobody stated the side the needle comes
     * from, the first shaft tells it.
     *
     * @throws dev.plumbline.problem.Refusal when a plan cannot be made of the input
     */
    public static Comparison planOnly(PlanInput input, List<ObservationInput> observed) {
        return Comparing.plan(input, observed);
    }
}
