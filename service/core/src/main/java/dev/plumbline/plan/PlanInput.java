// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.geometry.InputUncertainty;
import dev.plumbline.geometry.Probe;
import dev.plumbline.needle.Needle;
import java.util.Optional;
import java.util.OptionalDouble;

/** Everything a plan is computed from. */
public record PlanInput(
        Approach approach,
        FrameGeometry frame,
        Probe probe,
        PlanMarks marks,
        Needle needle,
        Optional<Intent> intent,
        Constraints constraints,
        InputUncertainty uncertainty) {
    PlanInput withNeedleLength(double lengthMm) {
        Needle longer = new Needle(needle.gauge(), OptionalDouble.of(lengthMm), needle.echogenic());
        return new PlanInput(approach, frame, probe, marks, longer, intent, constraints, uncertainty);
    }

    PlanInput withConstraints(Constraints other) {
        return new PlanInput(approach, frame, probe, marks, needle, intent, other, uncertainty);
    }
}
