// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.observation;

import dev.plumbline.geometry.Assumption;
import dev.plumbline.geometry.CaseInputs;
import dev.plumbline.geometry.Doubt;
import dev.plumbline.geometry.Extents;
import dev.plumbline.geometry.Gradient;
import dev.plumbline.geometry.Inputs;
import dev.plumbline.geometry.PointMm;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.ProbeFrame;
import dev.plumbline.geometry.Reading;
import dev.plumbline.geometry.Readings;
import dev.plumbline.geometry.Side;
import dev.plumbline.plan.Approach;
import dev.plumbline.plan.Assumed;
import dev.plumbline.plan.PlanDraft;
import dev.plumbline.plan.PlanInput;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.RealFieldElement;

/** Measures an observation as part of a comparison. */
public final class Observing {
    /** A shaft so short that its angle is uncertain by more than this is doubted first (design choice). */
    private static final double UNCERTAIN_ANGLE_DEG = 5;

    /** A tip farther from the shaft line than this many standard uncertainties is doubted. */
    private static final double OFF_SHAFT = 3;

    private Observing() {}

    /** An observation with the formulas it came from. */
    public record Drafted(Observation observation, ObservationDraft<Gradient> draft) {}

    /**
     * Refuses an observation that nothing can be measured from.
     *
     * @param pointer to the observation in the case document
     * @throws dev.plumbline.problem.Refusal when nothing can be measured from the marks
     */
    public static void check(ObservationInput input, String pointer, Approach approach) {
        new ObservationCheck(input.marks(), pointer).check(input.frame(), approach);
    }

    /** The side of the image the needle comes from: that of its shallower end; empty without a shaft that leans. */
    public static Optional<Side> sideOf(ObservationInput input, boolean imageInverted) {
        Comparator<PointPx> byRow = Comparator.comparingDouble(PointPx::row);
        Comparator<PointPx> byDepth = imageInverted ? byRow.reversed() : byRow;
        List<PointPx> shaft = input.marks().shaft();
        if (shaft.size() < 2) {
            return Optional.empty();
        }
        double shallow = shaft.stream().min(byDepth).orElseThrow().column();
        double deep = shaft.stream().max(byDepth).orElseThrow().column();
        return shallow == deep ? Optional.empty() : Optional.of(shallow > deep ? Side.RIGHT : Side.LEFT);
    }

    /** What an observed frame adds to the extents a scanner's tolerance is applied to. */
    public static void addExtents(Extents extents, ObservationInput input, String pointer, PlanInput plan) {
        ObservationMarks own = input.marks();
        List<PointPx> marks = new ArrayList<>(own.shaft());
        marks.addAll(own.skin());
        own.tip().ifPresent(marks::add);
        own.midpoint().ifPresent(marks::add);
        own.target().ifPresent(marks::add);
        extents.add(
                input.frame().equipment(),
                ObservedFrame.calibration(input, pointer, plan).pixel(),
                marks);
    }

    /** The formulas of an observation over any kind of number; for input that {@link #check} has passed. */
    public static <T extends RealFieldElement<T>> ObservationDraft<T> draft(
            ObservationInput input, String pointer, PlanDraft<T> plan, CaseInputs<T> inputs) {
        return draft(ObservedFrame.of(input, pointer, plan, inputs), inputs.numbers());
    }

    private static <T extends RealFieldElement<T>> ObservationDraft<T> draft(ObservedFrame<T> seen, Inputs<T> inputs) {
        return seen.plan().input().approach() == Approach.IN_PLANE
                ? new InPlaneMeasuring<>(seen).measure()
                : new OutOfPlaneMeasuring<>(seen, inputs).measure();
    }

    /** Measures; for input that {@link #check} has passed. */
    public static Drafted observe(
            ObservationInput input, String pointer, PlanDraft<Gradient> plan, CaseInputs<Gradient> inputs) {
        ObservedFrame<Gradient> seen = ObservedFrame.of(input, pointer, plan, inputs);
        ObservationDraft<Gradient> draft = draft(seen, inputs.numbers());
        Readings<ObservationQuantity> readings = draft.quantities().readings(inputs.numbers());
        Observation observation = new Observation(
                input.marks().id(),
                input.marks().phase(),
                readings,
                draft.entry().flatMap(entry -> seen.axes().map(axes -> axes.toPixel(entry))),
                carriedPlan(seen),
                assumptions(seen),
                doubts(seen, draft, readings));
        return new Drafted(observation, draft);
    }

    /** The plan in the observed frame's own pixels, where both frames know skin and midpoint. */
    private static Optional<Observation.CarriedPlan> carriedPlan(ObservedFrame<Gradient> seen) {
        PlanDraft<Gradient> plan = seen.plan();
        if (seen.input().samePictureAsPlan()
                || seen.axes().isEmpty()
                || seen.frame().midpoint().isEmpty()
                || plan.frame().midpoint().isEmpty()
                || plan.target().isEmpty()) {
            return Optional.empty();
        }
        ProbeFrame<Gradient> axes = seen.axes().get();
        PointMm<Gradient> target = plan.target().get();
        if (plan.input().approach() == Approach.OUT_OF_PLANE) {
            return Optional.of(new Observation.CarriedPlan(axes.toPixel(target), axes.toPixel(target)));
        }
        return plan.entry().map(entry -> new Observation.CarriedPlan(axes.toPixel(entry), axes.toPixel(target)));
    }

    private static List<Assumption> assumptions(ObservedFrame<Gradient> seen) {
        List<Assumption> assumptions = new ArrayList<>();
        if (seen.plan().input().approach() == Approach.IN_PLANE) {
            assumptions.addAll(Assumed.inPlane(seen.plan().input().probe()));
        } else {
            assumptions.addAll(Assumed.outOfPlane(seen.plan().input().probe()));
        }
        assumptions.addAll(seen.inherited());
        assumptions.addAll(seen.frame().scaleAssumptions());
        if (!seen.tipConfirmed()) {
            assumptions.add(Assumption.SEEN_END_MAY_BE_SHAFT);
        }
        return assumptions;
    }

    private static List<Doubt> doubts(
            ObservedFrame<Gradient> seen, ObservationDraft<Gradient> draft, Readings<ObservationQuantity> readings) {
        List<Doubt> doubts = new ArrayList<>();
        if (!seen.shaft().isEmpty()
                && readings.of(ObservationQuantity.ANGLE_TO_SKIN) instanceof Reading.Seen angle
                && angle.expandedUncertainty() > UNCERTAIN_ANGLE_DEG) {
            doubts.add(Doubt.SHORT_SHAFT);
        }
        if (seen.frame().skinAssumed()) {
            doubts.add(Doubt.SKIN_ASSUMED);
        }
        if (seen.frame().midpointOffSkin(seen.plan().input().probe())) {
            doubts.add(Doubt.MIDPOINT_OFF_SKIN);
        }
        doubts.addAll(seen.frame().scaleDoubts());
        if (draft.tipOffShaft().isPresent()) {
            Gradient off = draft.tipOffShaft().get();
            if (Math.abs(off.getReal()) > OFF_SHAFT * off.norm()) {
                doubts.add(Doubt.TIP_OFF_SHAFT);
            }
        }
        return doubts;
    }
}
