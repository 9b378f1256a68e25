// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.CaseInputs;
import dev.plumbline.geometry.Extents;
import dev.plumbline.geometry.Gradient;
import dev.plumbline.geometry.NominalInputs;
import java.util.Optional;

/** Scenes at nominal values, as planning decides on. */
final class Scenes {
    private Scenes() {}

    static InPlaneScene<Gradient> nominal(PlanInput input) {
        CaseInputs<Gradient> numbers = new CaseInputs<>(new NominalInputs(), input.uncertainty(), new Extents());
        return InPlaneScene.of(
                        input,
                        PlannedFrame.of(input, PlannedFrame.calibration(input), numbers),
                        Obstacles.Marked.of(input.marks(), numbers),
                        Planning.orientation(input, Optional.empty()))
                .orElseThrow();
    }
}
