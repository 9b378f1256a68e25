// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.observation;

import dev.plumbline.geometry.Assumption;
import dev.plumbline.geometry.Doubt;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Reading;
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

    /**
     * What the visible part says about the probe's rotation, in words: how much at most and which end to move, never to
     * which side. Empty where nothing can be said or the tip is confirmed.
     */
    public Optional<String> rotationWords() {
        boolean tipKnown = !readings.has(ObservationQuantity.TIP_DEPTH)
                || readings.of(ObservationQuantity.TIP_DEPTH) instanceof Reading.Seen;
        if (tipKnown
                || !readings.has(ObservationQuantity.ROTATION_BOUND)
                || !(readings.of(ObservationQuantity.ROTATION_BOUND) instanceof Reading.Seen bound)) {
            return Optional.empty();
        }
        return Optional.of("The probe may be turned against the needle by up to "
                + Math.max(1, Math.round(bound.value()))
                + "\u00b0; one frame does not show to which side. Keep the probe's end over the seen part still and turn the"
                + " other end, over the unseen part, a nudge each way.");
    }

    /** The plan on the observed frame, in its pixels; the entry may lie outside the image. Out-of-plane: entry = target. */
    public record CarriedPlan(PointPx entry, PointPx target) {}
}
