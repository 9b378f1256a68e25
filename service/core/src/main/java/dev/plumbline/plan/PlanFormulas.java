// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.Calibration;
import dev.plumbline.geometry.CaseInputs;
import dev.plumbline.geometry.MarkedFrame;
import dev.plumbline.geometry.Orientation;
import java.util.Optional;
import org.apache.commons.math3.RealFieldElement;

/**
 * The formulas of an in-plane plan, to be run over any kind of number: plain values, values with derivatives, or draws of a
 * Monte Carlo simulation that holds the chosen entry fixed. For input that {@link PlanCheck} has passed.
 */
public final class PlanFormulas {
    private final PlanInput input;
    private final Orientation orientation;
    private final Calibration calibration;

    public PlanFormulas(PlanInput input, Orientation orientation) {
        this.input = input;
        this.orientation = orientation;
        calibration = PlannedFrame.calibration(input);
    }

    /** For a decided path; empty without a skin line or where no skin is met. */
    public <T extends RealFieldElement<T>> Optional<PlanDraft<T>> of(Decision decision, CaseInputs<T> numbers) {
        return scene(numbers)
                .flatMap(scene -> InPlanePath.find(scene, decision))
                .map(this::of);
    }

    <T extends RealFieldElement<T>> PlanDraft<T> of(InPlanePath<T> path) {
        InPlaneScene<T> scene = path.scene();
        return new PlanDraft<>(
                input,
                orientation,
                scene.frame(),
                InPlaneQuantities.plan(path),
                Optional.of(path.entry()),
                Optional.of(scene.target()));
    }

    <T extends RealFieldElement<T>> MarkedFrame<T> frame(CaseInputs<T> numbers) {
        return PlannedFrame.of(input, calibration, numbers);
    }

    <T extends RealFieldElement<T>> Optional<InPlaneScene<T>> scene(CaseInputs<T> numbers) {
        return InPlaneScene.of(input, frame(numbers), Obstacles.Marked.of(input.marks(), numbers), orientation);
    }
}
