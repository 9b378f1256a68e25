// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.Readings;
import java.util.List;

/** One path beside others: what it would mean and, if it does not fit the limits, why not. */
public record PlanRow(Readings<PlanQuantity> readings, boolean feasible, List<Limit> why) {
    public PlanRow {
        why = List.copyOf(why);
    }
}
