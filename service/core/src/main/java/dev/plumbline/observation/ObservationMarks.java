// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.observation;

import dev.plumbline.geometry.PointPx;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a person marked on a frame that shows the needle, or says about it.
 *
 * @param shaft none, or two and more points along the shaft, in the order given
 * @param tip the deepest seen end; only {@code tipIsTip} makes it the tip. Out-of-plane: the bright dot
 * @param midpoint of the transducer face on this frame, where it differs from the plan's
 * @param target on this frame, where it differs from the plan's
 * @param skin on this frame, where it differs from the plan's
 * @param punctureDistanceMm out-of-plane: measured on the skin
 */
public record ObservationMarks(
        String id,
        Optional<Phase> phase,
        List<PointPx> shaft,
        Optional<PointPx> tip,
        Optional<Boolean> tipIsTip,
        Optional<PointPx> midpoint,
        Optional<PointPx> target,
        List<PointPx> skin,
        OptionalDouble punctureDistanceMm) {
    public ObservationMarks {
        shaft = List.copyOf(shaft);
        skin = List.copyOf(skin);
    }
}
