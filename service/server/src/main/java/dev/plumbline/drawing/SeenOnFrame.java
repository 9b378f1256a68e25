// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import dev.plumbline.deviation.Comparison;
import dev.plumbline.deviation.Deviation;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.observation.Observation;
import dev.plumbline.observation.ObservationInput;
import dev.plumbline.plan.InPlanePlan;
import dev.plumbline.plan.OutOfPlanePlan;
import dev.plumbline.plan.Plan;
import dev.plumbline.plan.PlanInput;
import java.util.Optional;

/**
 * One observation as it is to be drawn.
 *
 * @param carried the plan on the observed frame, where it can be carried over
 */
record SeenOnFrame(
        PlanDrawing.Made made,
        Observation observation,
        Deviation deviation,
        FrameView view,
        Optional<Observation.CarriedPlan> carried,
        ObservedItems items) {
    /** @param oneOfSeveral its labels name it */
    static SeenOnFrame of(PlanDrawing.Made made, PlanInput input, Comparison comparison, boolean oneOfSeveral) {
        Plan plan = comparison.plan();
        ObservationInput observed = made.input();
        Observation observation = comparison.observations().get(made.index());
        Deviation deviation = comparison.deviations().get(made.index());
        FrameView view = FrameView.observed(observed, input, plan);
        Optional<Observation.CarriedPlan> carried = observation
                .carriedPlan()
                .or(() -> observed.samePictureAsPlan() ? onItsOwnFrame(plan) : Optional.empty());
        String name = oneOfSeveral ? Wording.name(observation.id()) + ": " : "";
        return new SeenOnFrame(
                made,
                observation,
                deviation,
                view,
                carried,
                new ObservedItems(
                        observed.marks(), observation, deviation, new ObservedItems.Place(view.axis(), name)));
    }

    private static Optional<Observation.CarriedPlan> onItsOwnFrame(Plan plan) {
        if (plan instanceof InPlanePlan inPlane) {
            return inPlane.line().map(line -> new Observation.CarriedPlan(line.entry(), line.target()));
        }
        PointPx target = ((OutOfPlanePlan) plan).target();
        return Optional.of(new Observation.CarriedPlan(target, target));
    }

    /** Marked on the observed frame, else the plan's. */
    Optional<PointPx> target() {
        return made.input().marks().target().or(() -> carried.map(Observation.CarriedPlan::target));
    }
}
