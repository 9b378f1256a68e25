// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.CaseInputs;
import dev.plumbline.geometry.ProbeFrame;
import dev.plumbline.geometry.SkinCourse;
import java.util.List;
import org.apache.commons.math3.RealFieldElement;

/**
 * What was marked round the path, in the probe frame.
 *
 * @param marked as inputs of the case
 * @param hazards those that lie in tissue at least in part, in the order they were marked
 * @param nerves likewise
 * @param ignored names of hazards that lie wholly above the skin
 */
record Obstacles<T extends RealFieldElement<T>>(
        Marked<T> marked, List<MeasuredObstacle<T>> hazards, List<MeasuredObstacle<T>> nerves, List<String> ignored) {
    /** Marked structures as inputs of the case. */
    record Marked<T extends RealFieldElement<T>>(List<MarkedShape<T>> hazards, List<MarkedShape<T>> nerves) {
        static <T extends RealFieldElement<T>> Marked<T> of(PlanMarks marks, CaseInputs<T> inputs) {
            return new Marked<>(
                    marks.hazards().stream()
                            .map(hazard -> new MarkedShape<>(hazard.name(), hazard.shape(), inputs))
                            .toList(),
                    marks.nerves().stream()
                            .map(nerve -> new MarkedShape<>(nerve.name(), nerve.shape(), inputs))
                            .toList());
        }
    }

    static <T extends RealFieldElement<T>> Obstacles<T> of(Marked<T> marked, ProbeFrame<T> axes, SkinCourse skin) {
        List<MeasuredObstacle<T>> hazards =
                marked.hazards.stream().map(s -> MeasuredObstacle.of(s, axes)).toList();
        return new Obstacles<>(
                marked,
                hazards.stream().filter(h -> !Above.skin(h.nominal(), skin)).toList(),
                marked.nerves.stream()
                        .map(s -> MeasuredObstacle.of(s, axes))
                        .filter(nerve -> !Above.skin(nerve.nominal(), skin))
                        .toList(),
                hazards.stream()
                        .filter(h -> Above.skin(h.nominal(), skin))
                        .map(h -> h.nominal().name())
                        .toList());
    }
}
