// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;

/** A frame shows the whole face: a footprint that is longer than the frame is wide has another unit or another probe. */
final class FootprintCheck {
    /** Stated lengths and scales are rounded; a design choice. */
    private static final double TOLERANCE = 1.02;

    private FootprintCheck() {}

    /** Refuses a footprint that is longer than the planned frame is wide. */
    static void check(PlanInput input) {
        if (input.probe().footprintMm().isEmpty()) {
            return;
        }
        double width = input.frame().columns()
                * PlannedFrame.calibration(input).pixel().mmPerColumn();
        if (input.probe().footprintMm().getAsDouble() > TOLERANCE * width) {
            throw new Refusal(new Problem.InvalidValue(
                    "/probe/footprintMm",
                    "The footprint is longer than the frame is wide, which is " + Words.mm(width) + ".",
                    "Give the length of the active face in millimetres, or the frame that shows all of it."));
        }
    }
}
