// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.observation;

import dev.plumbline.geometry.Assumption;
import dev.plumbline.geometry.Doubt;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Readings;
import java.util.List;
import java.util.Optional;

/**
 * The path measured on a saved frame.
 *
 * @param entry where the shaft line meets the skin in pixels of this frame, also outside the image; empty without one
 * @param carriedPlan the plan's path on this frame, where the plan can be carried over to another frame than its own
 */
public record Observation(
        String id,
        Optional<Phase> phase,
        Readings<ObservationQuantity> readings,
        Optional<PointPx> entry,
        Optional<CarriedPlan> carriedPlan,
        List<Assumption> assumptions,
        List<Doubt> doubts) {
    public Observation {
        assumptions = List.copyOf(assumptions);
        doubts = List.copyOf(doubts);
    }

    /** The plan on the observed frame, in its pixels; the entry may lie outside the image. Out-of-plane: entry = target. */
    public record CarriedPlan(PointPx entry, PointPx target) {}
}
