// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import dev.plumbline.deviation.Comparison;
import dev.plumbline.geometry.Calibration;
import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Probe;
import dev.plumbline.geometry.Side;
import dev.plumbline.geometry.SkinBeyondProbe;
import dev.plumbline.observation.Observation;
import dev.plumbline.observation.ObservationInput;
import dev.plumbline.observation.ObservationMarks;
import dev.plumbline.plan.InPlanePlan;
import dev.plumbline.plan.Plan;
import dev.plumbline.plan.PlanInput;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One frame with its scale and skin line: what every item of its drawing is placed by.
 *
 * @param midpointKnown the axis starts at the probe's midpoint, not only above the target
 * @param edgeMm from the probe's midpoint to the edge that entries are counted from; empty where that is not known
 */
record FrameView(
        FrameGeometry frame,
        Calibration calibration,
        SkinAxis axis,
        boolean midpointKnown,
        Optional<Double> edgeMm,
        OptionalDouble housingHalfThicknessMm) {

    static FrameView planned(PlanInput input, Plan plan) {
        Marks marks = new Marks(
                input.marks().target(), input.marks().skin(), input.probe().midpoint());
        return of(input.frame(), marks, input, plan);
    }

    /** Marks that the observed frame lacks are the plan's, as far as the core carried the plan over to it. */
    static FrameView observed(ObservationInput observed, PlanInput input, Comparison comparison, int index) {
        ObservationMarks own = observed.marks();
        Optional<Observation.CarriedPlan> carried =
                comparison.observations().get(index).carriedPlan();
        PointPx target = own.target()
                .or(() -> carried.map(Observation.CarriedPlan::target))
                .or(own::tip)
                .or(() -> own.shaft().stream().findFirst())
                .orElse(input.marks().target());
        boolean plansMarks = observed.samePictureAsPlan() || carried.isPresent();
        List<PointPx> skin = own.skin().isEmpty() && plansMarks ? input.marks().skin() : own.skin();
        Optional<PointPx> midpoint =
                own.midpoint().or(() -> plansMarks ? input.probe().midpoint() : Optional.empty());
        return of(observed.frame(), new Marks(target, skin, midpoint), input, comparison.plan());
    }

    private record Marks(PointPx target, List<PointPx> skin, Optional<PointPx> midpoint) {}

    private static FrameView of(FrameGeometry frame, Marks marks, PlanInput input, Plan plan) {
        Probe probe = input.probe();
        Calibration calibration = FrameScale.at(frame, marks.target());
        boolean down = probe.imageInverted().orElse(false);
        List<PointPx> skin = marks.skin().isEmpty() ? edge(frame, calibration, down) : marks.skin();
        SkinAxis axis = SkinAxis.through(
                skin,
                marks.midpoint().orElse(marks.target()),
                calibration.pixel(),
                new SkinAxis.Sense(needleFromRight(probe, plan), down),
                new SkinAxis.Face(
                        probe.footprintMm().orElse(0) / 2,
                        probe.skinBeyondProbe().orElse(new SkinBeyondProbe.Flat())));
        return new FrameView(
                frame, calibration, axis, marks.midpoint().isPresent(), edgeMm(probe), probe.housingHalfThicknessMm());
    }

    /** The edge of the region that shows the probe's face. */
    private static List<PointPx> edge(FrameGeometry frame, Calibration calibration, boolean down) {
        double left = calibration.region().map(region -> region.minColumn()).orElse(0);
        double right =
                calibration.region().map(region -> region.maxColumn() + 1).orElse(frame.columns());
        double top = calibration.region().map(region -> region.minRow()).orElse(0);
        double bottom = calibration.region().map(region -> region.maxRow() + 1).orElse(frame.rows());
        double row = down ? bottom : top;
        return List.of(new PointPx(left, row), new PointPx(right, row));
    }

    private static boolean needleFromRight(Probe probe, Plan plan) {
        if (probe.needleSide().isPresent()) {
            return probe.needleSide().get() == Side.RIGHT;
        }
        return !(plan instanceof InPlanePlan inPlane)
                || inPlane.line()
                        .map(line -> line.entry().column() >= line.target().column())
                        .orElse(true);
    }

    private static Optional<Double> edgeMm(Probe probe) {
        if (probe.housingLengthMm().isPresent()) {
            return Optional.of(probe.housingLengthMm().getAsDouble() / 2);
        }
        return probe.footprintMm().isPresent() ? Optional.of(probe.footprintMm().getAsDouble() / 2) : Optional.empty();
    }
}
