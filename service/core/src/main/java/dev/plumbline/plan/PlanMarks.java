// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.PointPx;
import java.util.List;
import java.util.Optional;

/**
 * What a person marked on the planned frame.
 *
 * @param target the point where the tip is meant to stop; never the nerve's centre
 * @param skin none, or two and more points along the skin line under the probe
 */
public record PlanMarks(
        PointPx target, Optional<TargetKind> targetKind, List<PointPx> skin, List<Nerve> nerves, List<Hazard> hazards) {
    public PlanMarks {
        skin = List.copyOf(skin);
        nerves = List.copyOf(nerves);
        hazards = List.copyOf(hazards);
    }
}
