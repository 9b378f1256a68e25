// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.observation;

import dev.plumbline.geometry.Check;
import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.plan.Approach;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;

/** Refuses marks that nothing can be measured from, each with the field to mend. */
final class ObservationCheck {
    private final ObservationMarks marks;
    private final String pointer;

    ObservationCheck(ObservationMarks marks, String pointer) {
        this.marks = marks;
        this.pointer = pointer;
    }

    void check(FrameGeometry frame, Approach approach) {
        Check.line(pointer + "/shaft", marks.shaft(), frame);
        Check.line(pointer + "/skin", marks.skin(), frame);
        marks.tip().ifPresent(tip -> Check.onFrame(pointer + "/tip", tip, frame));
        marks.midpoint().ifPresent(midpoint -> Check.onFrame(pointer + "/midpoint", midpoint, frame));
        marks.target().ifPresent(target -> Check.onFrame(pointer + "/target", target, frame));
        Check.positive(pointer + "/punctureDistanceMm", marks.punctureDistanceMm());
        if (approach == Approach.OUT_OF_PLANE && !marks.shaft().isEmpty()) {
            throw new Refusal(new Problem.InvalidValue(
                    pointer + "/shaft",
                    "Out-of-plane the needle crosses the image in one point; no shaft lies in it.",
                    "Mark the bright dot as tip, or state the approach inPlane."));
        }
        if (approach == Approach.IN_PLANE && marks.punctureDistanceMm().isPresent()) {
            throw new Refusal(new Problem.InvalidValue(
                    pointer + "/punctureDistanceMm",
                    "In-plane there is no distance between puncture and beam plane.",
                    "Leave it out, or state the approach outOfPlane."));
        }
    }
}
