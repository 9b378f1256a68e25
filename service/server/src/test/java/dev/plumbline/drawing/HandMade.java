// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import dev.plumbline.deviation.Comparison;
import dev.plumbline.deviation.Deviation;
import dev.plumbline.deviation.DeviationQuantity;
import dev.plumbline.geometry.Assumption;
import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.geometry.InputUncertainty;
import dev.plumbline.geometry.PixelSize;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Probe;
import dev.plumbline.geometry.Reading;
import dev.plumbline.geometry.Readings;
import dev.plumbline.geometry.Reason;
import dev.plumbline.geometry.Region;
import dev.plumbline.geometry.Shape;
import dev.plumbline.geometry.Side;
import dev.plumbline.geometry.UltrasoundRegion;
import dev.plumbline.needle.Needle;
import dev.plumbline.observation.Observation;
import dev.plumbline.observation.ObservationInput;
import dev.plumbline.observation.ObservationMarks;
import dev.plumbline.observation.ObservationQuantity;
import dev.plumbline.observation.Phase;
import dev.plumbline.plan.Approach;
import dev.plumbline.plan.Constraints;
import dev.plumbline.plan.Hazard;
import dev.plumbline.plan.InPlanePlan;
import dev.plumbline.plan.Intent;
import dev.plumbline.plan.Limit;
import dev.plumbline.plan.Nerve;
import dev.plumbline.plan.OutOfPlanePlan;
import dev.plumbline.plan.Plan;
import dev.plumbline.plan.PlanInput;
import dev.plumbline.plan.PlanMarks;
import dev.plumbline.plan.PlanNote;
import dev.plumbline.plan.PlanQuantity;
import dev.plumbline.plan.WayOut;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * Results for drawings, put together by plain trigonometry over a level skin line; a drawing only shows them, so nothing
 * here has to come from the engine.
 *
 * @param columns of the frame
 * @param skinRow row of the level skin line
 */
record HandMade(int columns, int rows, PixelSize pixel, double skinRow, double footprintMm) {
    /** The frame of the example in the case document's description: 38 mm wide and square. */
    static final HandMade SQUARE = new HandMade(640, 640, new PixelSize(0.059375, 0.059375), 40, 38);

    PointPx at(double u, double w) {
        return new PointPx(columns / 2.0 + u / pixel.mmPerColumn(), skinRow + w / pixel.mmPerRow());
    }

    FrameGeometry frame() {
        UltrasoundRegion region = new UltrasoundRegion(
                new Region(0, 0, 0, columns - 1, rows - 1),
                1,
                1,
                OptionalInt.empty(),
                3,
                3,
                pixel.mmPerColumn() / 10,
                pixel.mmPerRow() / 10,
                OptionalInt.empty(),
                OptionalInt.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty());
        return new FrameGeometry(columns, rows, List.of(region), Optional.empty(), Optional.empty(), "scanner");
    }

    PlanInput input(double depth, List<Nerve> nerves, List<Hazard> hazards) {
        return input(Approach.IN_PLANE, depth, nerves, hazards);
    }

    PlanInput outOfPlaneInput(double depth) {
        return input(Approach.OUT_OF_PLANE, depth, List.of(), List.of());
    }

    private PlanInput input(Approach approach, double depth, List<Nerve> nerves, List<Hazard> hazards) {
        Probe probe = new Probe(
                Optional.of(Probe.Kind.LINEAR),
                OptionalDouble.of(footprintMm),
                Optional.of(at(0, 0)),
                Optional.of(Side.RIGHT),
                OptionalDouble.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                approach == Approach.OUT_OF_PLANE ? OptionalDouble.of(9) : OptionalDouble.empty(),
                Optional.empty());
        PlanMarks marks = new PlanMarks(
                at(0, depth),
                Optional.empty(),
                List.of(new PointPx(0, skinRow), new PointPx(columns, skinRow)),
                nerves,
                hazards);
        return new PlanInput(
                approach,
                frame(),
                probe,
                marks,
                new Needle(OptionalInt.of(22), OptionalDouble.of(80), Optional.empty()),
                Optional.<Intent>empty(),
                Constraints.NOTHING_STATED,
                InputUncertainty.NOTHING_STATED);
    }

    InPlanePlan inPlane(double depth, double entry, Plan.Source source, List<Limit> binding) {
        double half = footprintMm / 2;
        double angle = Math.atan2(depth, entry);
        double seenDepth = Math.max(0, entry - half) * Math.tan(angle);
        Map<PlanQuantity, Reading> readings = new EnumMap<>(PlanQuantity.class);
        readings.put(PlanQuantity.ANGLE_TO_SKIN, new Reading.Seen(Math.toDegrees(angle), 0.41));
        readings.put(PlanQuantity.ENTRY_DISTANCE, new Reading.Seen(entry, 0));
        readings.put(PlanQuantity.ENTRY_FROM_PROBE_EDGE, new Reading.Seen(entry - half, 0));
        readings.put(PlanQuantity.TARGET_DEPTH, new Reading.Seen(depth, 0.2));
        readings.put(PlanQuantity.PATH, new Reading.Seen(Math.hypot(depth, entry), 0.3));
        readings.put(PlanQuantity.LEAD_IN, new Reading.Seen(Math.max(0, entry - half) / Math.cos(angle), 0.3));
        readings.put(PlanQuantity.FIRST_SEEN_DEPTH, new Reading.Seen(seenDepth, 0.2));
        readings.put(PlanQuantity.NEEDLE_LEFT, new Reading.Seen(80 - Math.hypot(depth, entry), 0.3));
        InPlanePlan.Line line =
                new InPlanePlan.Line(at(entry, 0), at(0, depth), Optional.of(at(Math.min(entry, half), seenDepth)));
        List<InPlanePlan.Interval> feasible = binding.isEmpty()
                ? List.of(new InPlanePlan.Interval(Math.max(half + 5, depth), Math.max(half + 5, depth) + 22))
                : List.of();
        return new InPlanePlan(
                source,
                binding.isEmpty(),
                true,
                new Readings<>(readings, PlanQuantity.class),
                Optional.of(line),
                new InPlanePlan.Clearances(List.of(), List.of()),
                judgement(binding),
                new InPlanePlan.Choices(feasible, Optional.empty(), Optional.empty(), List.of()),
                binding.isEmpty()
                        ? List.of()
                        : List.of(new WayOut(
                                WayOut.Kind.LONGER_NEEDLE,
                                new Readings<>(Map.of(), PlanQuantity.class),
                                "a needle of 100 mm or more")),
                "Enter 26 mm beyond the probe's edge, about 35\u00b0.");
    }

    private static Plan.Judgement judgement(List<Limit> binding) {
        return new Plan.Judgement(
                binding,
                List.of(Limit.of(Limit.Kind.LEAD_IN)),
                List.of(PlanNote.NO_NERVE_MARKED),
                List.of(Assumption.NEEDLE_IN_IMAGE_PLANE, Assumption.SKIN_FLAT_BEYOND_PROBE),
                List.of());
    }

    OutOfPlanePlan outOfPlane(double depth, double distance) {
        Map<PlanQuantity, Reading> readings = new EnumMap<>(PlanQuantity.class);
        readings.put(PlanQuantity.PUNCTURE_DISTANCE, new Reading.Seen(distance, 0));
        readings.put(PlanQuantity.PUNCTURE_FROM_PROBE_EDGE, new Reading.Seen(distance - 9, 0));
        readings.put(PlanQuantity.ANGLE_TO_SKIN, new Reading.Seen(Math.toDegrees(Math.atan2(depth, distance)), 0.5));
        readings.put(PlanQuantity.TARGET_DEPTH, new Reading.Seen(depth, 0.2));
        readings.put(PlanQuantity.PATH, new Reading.Seen(Math.hypot(depth, distance), 0.2));
        return new OutOfPlanePlan(
                Plan.Source.STATED,
                true,
                false,
                new Readings<>(readings, PlanQuantity.class),
                at(0, depth),
                judgement(List.of()),
                List.of(),
                List.of(new OutOfPlanePlan.Step(14.04, 5), new OutOfPlanePlan.Step(26.57, 10)),
                List.of(),
                "Puncture 20 mm from the middle of the probe at 45\u00b0.");
    }

    /** Marks of a straight shaft from the skin at {@code entry} to a tip at (u, w). */
    ObservationInput observed(double entry, PointPx tip, boolean tipIsTip) {
        PointPx skin = at(entry, 0);
        ObservationMarks marks = new ObservationMarks(
                "obs-1",
                Optional.of(Phase.FINAL_TIP),
                List.of(between(skin, tip, 0.55), between(skin, tip, 0.95)),
                Optional.of(tip),
                Optional.of(tipIsTip),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                OptionalDouble.of(22));
        return new ObservationInput(marks, frame(), true);
    }

    static PointPx between(PointPx from, PointPx to, double share) {
        return new PointPx(
                from.column() + share * (to.column() - from.column()), from.row() + share * (to.row() - from.row()));
    }

    Comparison compared(Plan plan, ObservationInput observed, double entry, PointPx planEntry) {
        boolean tipIsTip = observed.marks().tipIsTip().orElse(false);
        PointPx tip = observed.marks().tip().orElseThrow();
        double u = (tip.column() - columns / 2.0) * pixel.mmPerColumn();
        double w = (tip.row() - skinRow) * pixel.mmPerRow();
        double angle = Math.toDegrees(Math.atan2(w, entry - u));
        Map<ObservationQuantity, Reading> seen = new EnumMap<>(ObservationQuantity.class);
        Map<DeviationQuantity, Reading> differs = new EnumMap<>(DeviationQuantity.class);
        seen.put(ObservationQuantity.ANGLE_TO_SKIN, new Reading.Seen(angle, 0.8));
        seen.put(ObservationQuantity.ENTRY_DISTANCE, new Reading.Seen(entry, 0.6));
        seen.put(ObservationQuantity.DEEPEST_SEEN_DEPTH, new Reading.Seen(w, 0.2));
        seen.put(
                ObservationQuantity.TIP_DEPTH,
                tipIsTip ? new Reading.Seen(w, 0.2) : Reading.notSeen(Reason.TIP_NOT_CONFIRMED));
        seen.put(ObservationQuantity.CROSSING_DEPTH, new Reading.Seen(w, 0.2));
        seen.put(ObservationQuantity.PUNCTURE_DISTANCE, new Reading.Seen(22, 0.5));
        differs.put(
                DeviationQuantity.ANGLE_TO_SKIN,
                new Reading.Seen(angle - value(plan, PlanQuantity.ANGLE_TO_SKIN), 0.8));
        if (plan instanceof InPlanePlan) {
            differs.put(
                    DeviationQuantity.ENTRY_DISTANCE,
                    new Reading.Seen(entry - value(plan, PlanQuantity.ENTRY_DISTANCE), 0.6));
        }
        differs.put(
                DeviationQuantity.TIP_DEPTH,
                tipIsTip
                        ? new Reading.Seen(w - value(plan, PlanQuantity.TARGET_DEPTH), 0.3)
                        : Reading.notSeen(Reason.TIP_NOT_CONFIRMED));
        Observation observation = new Observation(
                "obs-1",
                Optional.of(Phase.FINAL_TIP),
                new Readings<>(seen, ObservationQuantity.class),
                plan instanceof InPlanePlan ? Optional.of(at(entry, 0)) : Optional.empty(),
                Optional.of(new Observation.CarriedPlan(planEntry, at(0, value(plan, PlanQuantity.TARGET_DEPTH)))),
                List.of(Assumption.NEEDLE_STRAIGHT, Assumption.PROBE_NOT_MOVED),
                List.of());
        return new Comparison(
                plan,
                List.of(observation),
                List.of(new Deviation("obs-1", new Readings<>(differs, DeviationQuantity.class))));
    }

    private static double value(Plan plan, PlanQuantity quantity) {
        return ((Reading.Seen) plan.readings().of(quantity)).value();
    }

    List<Hazard> hazards() {
        return List.of(
                new Hazard("artery", Hazard.Kind.ARTERY, OptionalDouble.of(2), new Shape.Disc(at(-9, 14), 3)),
                new Hazard(
                        "first rib",
                        Hazard.Kind.BONE,
                        OptionalDouble.empty(),
                        new Shape.Outline(
                                List.of(at(-15, 30), at(-6, 28.5), at(4, 29.5), at(9, 32), at(3, 34), at(-14, 33)))));
    }

    List<Nerve> nerves(double depth) {
        return List.of(
                new Nerve("median", new Shape.Disc(at(-3.4, depth), 2)),
                new Nerve(
                        "ulnar nerve",
                        new Shape.Outline(List.of(
                                at(-8, depth + 3), at(-5, depth + 2.4), at(-4.4, depth + 4), at(-7, depth + 5.4)))));
    }
}
