// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.Assumption;
import dev.plumbline.geometry.CaseInputs;
import dev.plumbline.geometry.Doubt;
import dev.plumbline.geometry.Gradient;
import dev.plumbline.geometry.MarkedFrame;
import dev.plumbline.geometry.Orientation;
import dev.plumbline.geometry.PointMm;
import dev.plumbline.geometry.ProbeFrame;
import dev.plumbline.geometry.Quantities;
import dev.plumbline.geometry.Reading;
import dev.plumbline.geometry.Readings;
import dev.plumbline.geometry.Reason;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Plans a path that crosses the image plane at the target. */
final class OutOfPlanePlanning {
    private static final double STEP_MM = 5;

    private final PlanInput input;
    private final Orientation orientation;
    private final CaseInputs<Gradient> inputs;
    private final MarkedFrame<Gradient> frame;

    OutOfPlanePlanning(PlanInput input, Orientation orientation, CaseInputs<Gradient> inputs) {
        this.input = input;
        this.orientation = orientation;
        this.inputs = inputs;
        frame = PlannedFrame.of(input, PlannedFrame.calibration(input), inputs);
    }

    Planning.Drafted plan() {
        Optional<ProbeFrame<Gradient>> axes = frame.probeFrame(orientation, "/marks/skin");
        if (axes.isEmpty()) {
            return withoutSkin();
        }
        PointMm<Gradient> target = axes.get().of(frame.target().orElseThrow());
        TargetCheck.inTissue(target, Obstacles.Marked.of(input.marks(), inputs), axes.get());
        OutOfPlaneRows<Gradient> rows = new OutOfPlaneRows<>(input, target.y());
        Optional<OutOfPlanePath<Gradient>> stated = input.intent().map(intent -> stated(intent, rows));
        Optional<OutOfPlanePath<Gradient>> path = stated.or(rows::proposed);
        List<Limit> broken = path.map(rows::brokenBy)
                .orElseGet(() -> rows.brokenBy(rows.steepTaken() ? rows.steep() : rows.usual()));
        Quantities<PlanQuantity, Gradient> quantities = quantities(rows, path, target);
        List<WayOut> ways = broken.isEmpty() ? List.of() : waysOut(rows, broken, path);
        boolean steep = stated.isEmpty() && rows.steepTaken();
        OutOfPlanePlan plan = new OutOfPlanePlan(
                stated.isPresent() ? Plan.Source.STATED : Plan.Source.PROPOSED,
                broken.isEmpty(),
                steep,
                quantities.readings(inputs.numbers()),
                input.marks().target(),
                judgement(broken, rows.unchecked()),
                Stream.of(rows.usual(), rows.steep()).map(p -> row(rows, p)).toList(),
                path.map(p -> stepDown(p, target.y())).orElse(List.of()),
                ways,
                OutOfPlaneWords.text(input, quantities, broken, ways));
        return new Planning.Drafted(
                plan, new PlanDraft<>(input, orientation, frame, quantities, Optional.empty(), Optional.of(target)));
    }

    private static OutOfPlanePath<Gradient> stated(Intent intent, OutOfPlaneRows<Gradient> rows) {
        if (intent instanceof Intent.PunctureDistance distance) {
            return rows.from(distance.mm());
        }
        throw new IllegalArgumentException("Only a puncture distance fixes a path across the image plane.");
    }

    private Quantities<PlanQuantity, Gradient> quantities(
            OutOfPlaneRows<Gradient> rows, Optional<OutOfPlanePath<Gradient>> path, PointMm<Gradient> target) {
        Quantities<PlanQuantity, Gradient> quantities =
                path.map(rows::row).orElseGet(() -> pathless(Reason.INFEASIBLE));
        quantities.put(PlanQuantity.TARGET_DEPTH, target.y());
        if (frame.midpoint().isPresent()) {
            quantities.put(PlanQuantity.ALONG_PROBE, target.x());
        } else {
            quantities.put(PlanQuantity.ALONG_PROBE, Reason.MIDPOINT_NOT_MARKED);
        }
        return quantities;
    }

    private static Quantities<PlanQuantity, Gradient> pathless(Reason why) {
        Quantities<PlanQuantity, Gradient> quantities = new Quantities<>(PlanQuantity.class);
        for (PlanQuantity quantity : new PlanQuantity[] {
            PlanQuantity.PUNCTURE_DISTANCE,
            PlanQuantity.PUNCTURE_FROM_PROBE_EDGE,
            PlanQuantity.ALONG_PROBE,
            PlanQuantity.ANGLE_TO_SKIN,
            PlanQuantity.TARGET_DEPTH,
            PlanQuantity.PATH,
            PlanQuantity.SHORTEST_NEEDLE
        }) {
            quantities.put(quantity, why);
        }
        return quantities;
    }

    private Planning.Drafted withoutSkin() {
        Quantities<PlanQuantity, Gradient> quantities = pathless(Reason.SKIN_NOT_MARKED);
        input.intent().ifPresent(intent -> {
            if (intent instanceof Intent.PunctureDistance distance) {
                quantities.put(PlanQuantity.PUNCTURE_DISTANCE, Gradient.constant(distance.mm()));
            }
        });
        OutOfPlanePlan plan = new OutOfPlanePlan(
                input.intent().isPresent() ? Plan.Source.STATED : Plan.Source.PROPOSED,
                false,
                false,
                quantities.readings(inputs.numbers()),
                input.marks().target(),
                judgement(List.of(), List.of(Limit.of(Limit.Kind.HOUSING), Limit.of(Limit.Kind.REACH))),
                List.of(),
                List.of(),
                List.of(),
                InPlaneWords.withoutSkin());
        return new Planning.Drafted(
                plan, new PlanDraft<>(input, orientation, frame, quantities, Optional.empty(), Optional.empty()));
    }

    private PlanRow row(OutOfPlaneRows<Gradient> rows, OutOfPlanePath<Gradient> path) {
        List<Limit> broken = rows.brokenBy(path);
        return new PlanRow(rows.row(path).readings(inputs.numbers()), broken.isEmpty(), broken);
    }

    /** From the same puncture: crossing depths 5, 10, ... and last the target's. */
    private List<OutOfPlanePlan.Step> stepDown(OutOfPlanePath<Gradient> path, Gradient depth) {
        List<OutOfPlanePlan.Step> steps = new ArrayList<>();
        for (double crossing = STEP_MM; crossing < depth.getReal() - Intervals.TOLERANCE_MM; crossing += STEP_MM) {
            Gradient depthOnTheWay = Gradient.constant(crossing);
            steps.add(step(depthOnTheWay.atan2(path.distance()), depthOnTheWay));
        }
        steps.add(step(path.angle(), depth));
        return steps;
    }

    private OutOfPlanePlan.Step step(Gradient angle, Gradient depth) {
        return new OutOfPlanePlan.Step(
                new Reading.Seen(
                        Math.toDegrees(angle.getReal()),
                        Math.toDegrees(inputs.numbers().standardUncertainty(angle))),
                new Reading.Seen(depth.getReal(), inputs.numbers().standardUncertainty(depth)));
    }

    private List<WayOut> waysOut(
            OutOfPlaneRows<Gradient> rows, List<Limit> broken, Optional<OutOfPlanePath<Gradient>> stated) {
        List<WayOut> ways = new ArrayList<>();
        if (broken.contains(Limit.of(Limit.Kind.HOUSING))) {
            OutOfPlanePath<Gradient> farther =
                    rows.from(rows.nearestForHousing().orElseThrow());
            if (rows.brokenBy(farther).isEmpty()) {
                ways.add(way(
                        WayOut.Kind.SHALLOWER,
                        rows.row(farther),
                        "Farther from the probe, " + OutOfPlaneWords.place(farther) + "."));
            }
        }
        rows.nearer(stated.orElseGet(rows::usual))
                .ifPresent(nearer -> ways.add(way(
                        WayOut.Kind.STEEPER,
                        rows.row(nearer),
                        "Nearer to the probe, " + OutOfPlaneWords.place(nearer) + ".")));
        if (broken.contains(Limit.of(Limit.Kind.REACH))) {
            OutOfPlanePath<Gradient> path = stated.orElseGet(() -> rows.steepTaken() ? rows.steep() : rows.usual());
            Quantities<PlanQuantity, Gradient> row = rows.row(path);
            double length =
                    row.number(PlanQuantity.SHORTEST_NEEDLE).orElseThrow().getReal();
            if (length <= WaysOut.LONGEST_NEEDLE_MM
                    && rows.brokenBy(path).equals(List.of(Limit.of(Limit.Kind.REACH)))) {
                ways.add(way(
                        WayOut.Kind.LONGER_NEEDLE,
                        row,
                        "A needle of at least " + (long) Math.ceil(length) + " mm, " + OutOfPlaneWords.place(path)
                                + "."));
            }
        }
        return ways;
    }

    private WayOut way(WayOut.Kind kind, Quantities<PlanQuantity, Gradient> row, String text) {
        Readings<PlanQuantity> readings = row.readings(inputs.numbers());
        return new WayOut(kind, readings, text);
    }

    private Plan.Judgement judgement(List<Limit> binding, List<Limit> unchecked) {
        List<Doubt> doubts = new ArrayList<>();
        if (frame.skinAssumed()) {
            doubts.add(Doubt.SKIN_ASSUMED);
        }
        if (frame.midpointOffSkin(input.probe())) {
            doubts.add(Doubt.MIDPOINT_OFF_SKIN);
        }
        doubts.addAll(frame.scaleDoubts());
        List<Assumption> assumptions = new ArrayList<>(Assumed.outOfPlane(input.probe()));
        assumptions.addAll(frame.scaleAssumptions());
        return new Plan.Judgement(binding, unchecked, List.of(), assumptions, doubts);
    }
}
