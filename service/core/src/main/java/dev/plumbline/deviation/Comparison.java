// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.deviation;

import dev.plumbline.observation.Observation;
import dev.plumbline.plan.Plan;
import java.util.List;

/** A plan, what was observed, and how each observation differs from the plan, in the order of the observations. */
public record Comparison(Plan plan, List<Observation> observations, List<Deviation> deviations) {
    public Comparison {
        observations = List.copyOf(observations);
        deviations = List.copyOf(deviations);
    }
}
