// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.deviation.Comparison;
import dev.plumbline.geometry.Assumption;
import dev.plumbline.geometry.Calibration;
import dev.plumbline.observation.Observation;
import dev.plumbline.plan.Approach;
import dev.plumbline.plan.Plan;
import dev.plumbline.plan.PlanQuantity;
import java.util.List;
import java.util.Optional;

/** TID 1501 with finding F-PLANMAP: the plan drawn again on an observed frame, where it can be carried over. */
final class CarriedPlanGroup {
    private CarriedPlanGroup() {}

    /** @param index of the observation, from 0 */
    static ContentItem of(RecordSource source, int index, Observation.CarriedPlan carried) {
        Comparison comparison = source.revision().comparison();
        RecordSource.Placed observed = source.observed(index);
        Plan plan = comparison.plan();
        MeasurementGroup group = new MeasurementGroup(
                        "Plan on Observation " + (index + 1),
                        source.trackingUid(
                                "map/" + comparison.observations().get(index).id()),
                        Concepts.CARRIED_PLAN,
                        Codes.own("MM-MAPPED"))
                .addAll(FindingSite.of(source.revision().document().context()))
                .addAll(Algorithm.items(
                        "Plumbline plan carried over", source.installation().softwareVersion(), Parameters.none()))
                .add(ContentItem.uid(Relation.CONTAINS, Concepts.COMPARED_PLAN, source.trackingUid(PlanGroup.NAME)))
                .says("E-ASSUME", Codes.ofWord("assumptions", Assumption.PROBE_NOT_MOVED.word()));
        Optional<Calibration> calibration = Scales.of(
                observed.frame().geometry(), source.revision().document().probe(), List.of(carried.target()));
        GroupDrawing drawing = new GroupDrawing(observed.marks(), group, calibration, false);
        Optional<DrawnPath> path = source.revision().document().approach() == Approach.IN_PLANE
                ? DrawnPath.of(
                        carried.entry(), carried.target(), observed.frame().geometry())
                : Optional.empty();
        // Not the target too: a viewer would set the label there, where the tip with its own label often is.
        path.ifPresentOrElse(
                line -> drawing.path(line, plan.readings().of(PlanQuantity.PATH)),
                () -> drawing.point(
                        Concepts.TARGET,
                        carried.target(),
                        Quantity.of(PlanQuantity.TARGET_DEPTH),
                        plan.readings().of(PlanQuantity.TARGET_DEPTH)));
        return group.comment(Labels.angle("Plan", plan.readings().of(PlanQuantity.ANGLE_TO_SKIN)))
                .item();
    }
}
