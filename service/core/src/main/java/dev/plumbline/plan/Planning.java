// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.CaseInputs;
import dev.plumbline.geometry.Extents;
import dev.plumbline.geometry.Gradient;
import dev.plumbline.geometry.GradientInputs;
import dev.plumbline.geometry.Orientation;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Side;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Makes a plan, alone or as part of a comparison. */
public final class Planning {
    private Planning() {}

    /** A plan with the formulas it came from. */
    public record Drafted(Plan plan, PlanDraft<Gradient> draft) {}

    static Plan plan(PlanInput input) {
        PlanCheck.check(input);
        Extents extents = new Extents();
        if (input.uncertainty().scannerTolerance().isPresent()) {
            addExtents(extents, input);
        }
        CaseInputs<Gradient> inputs = new CaseInputs<>(new GradientInputs(), input.uncertainty(), extents);
        return draft(input, orientation(input, Optional.empty()), inputs).plan();
    }

    /** For input that {@link PlanCheck} has passed. */
    public static Drafted draft(PlanInput input, Orientation orientation, CaseInputs<Gradient> inputs) {
        return input.approach() == Approach.IN_PLANE
                ? new InPlanePlanning(input, orientation, inputs).plan()
                : new OutOfPlanePlanning(input, orientation, inputs).plan();
    }

    /** What the planned frame adds to the extents a scanner's tolerance is applied to. */
    public static void addExtents(Extents extents, PlanInput input) {
        List<PointPx> marks = new ArrayList<>(input.marks().skin());
        marks.add(input.marks().target());
        input.probe().midpoint().ifPresent(marks::add);
        extents.add(input.frame().equipment(), PlannedFrame.calibration(input).pixel(), marks);
    }

    /**
     * Which way the probe frame lies: as stated, else from a shaft; across the image plane it only gives the distance along
     * the probe its sign, and right is taken.
     *
     * @param observed the side the needle came from in the first observation that shows a shaft
     * @throws Refusal where an in-plane plan has neither
     */
    public static Orientation orientation(PlanInput input, Optional<Side> observed) {
        Optional<Side> side = input.probe().needleSide().or(() -> observed);
        if (side.isEmpty() && input.approach() == Approach.IN_PLANE) {
            throw new Refusal(new Problem.MissingField(
                    "/probe/needleSide",
                    "State left or right: the side of the displayed image the needle comes from; or mark a shaft."));
        }
        return new Orientation(
                side.orElse(Side.RIGHT), input.probe().imageInverted().orElse(false));
    }
}
