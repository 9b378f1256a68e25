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
import dev.plumbline.plan.PlanQuantity;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * What there is to see of a plan, and of an observation beside its plan.
 *
 * <p>A scene says that it is a draft until {@link Scene#signed()} is asked of it.
 */
public final class PlanDrawing {

    private PlanDrawing() {}

    /** The plan on the frame it was made on. */
    public static Scene of(PlanInput input, Comparison comparison) {
        Plan plan = comparison.plan();
        FrameView view = FrameView.planned(input, plan);
        PointPx target = input.marks().target();
        List<Item> items = new ArrayList<>();
        if (plan instanceof InPlanePlan inPlane) {
            items.addAll(PathItems.fan(inPlane, target, view));
        }
        items.addAll(MarkedItems.of(input.marks(), view.calibration().pixel()));
        if (plan instanceof InPlanePlan inPlane) {
            items.addAll(ScaleItems.of(view, farthest(inPlane.line().stream().map(InPlanePlan.Line::entry), view)));
            inPlane.line()
                    .ifPresent(line ->
                            view.axis().ifPresent(axis -> items.addAll(PathItems.labelled(inPlane, line, axis))));
        } else {
            items.addAll(ScaleItems.of(view, OptionalDouble.empty()));
        }
        items.addAll(target(target, plan));
        String title = plan instanceof InPlanePlan ? "Needle plan, in-plane" : "Needle plan, out-of-plane";
        return scene(view, items, Notes.of(plan, view), new Words(title, plan.text()));
    }

    /**
     * One observation on its own frame, with the plan carried over to it where that is possible.
     *
     * @param index of the observation in the comparison
     */
    public static Scene ofObservation(ObservationInput observed, PlanInput input, Comparison comparison, int index) {
        Plan plan = comparison.plan();
        Observation observation = comparison.observations().get(index);
        Deviation deviation = comparison.deviations().get(index);
        FrameView view = FrameView.observed(observed, input, plan);
        Optional<Observation.CarriedPlan> carried = observation
                .carriedPlan()
                .or(() -> observed.samePictureAsPlan() ? onItsOwnFrame(plan) : Optional.empty());
        List<Item> items = new ArrayList<>();
        if (observed.samePictureAsPlan()) {
            items.addAll(MarkedItems.of(input.marks(), view.calibration().pixel()));
        }
        ObservedItems seen = new ObservedItems(observed.marks(), observation, deviation, view.axis());
        if (plan instanceof InPlanePlan inPlane) {
            items.addAll(inPlane(inPlane, carried, observation, view));
            items.addAll(seen.inPlane(carried));
        } else {
            items.addAll(ScaleItems.of(view, OptionalDouble.empty()));
            items.addAll(seen.crossing(carried));
        }
        observed.marks()
                .target()
                .or(() -> carried.map(Observation.CarriedPlan::target))
                .ifPresent(at -> items.addAll(target(at, plan)));
        String title = observation
                .phase()
                .map(phase -> "Observed, " + Wording.spelledOut(phase.word()))
                .orElse("Observed");
        String description = "Planned, observed and difference; observation " + Wording.name(observation.id()) + ".";
        return scene(view, items, Notes.of(plan, observation, deviation, view), new Words(title, description));
    }

    private static Optional<Observation.CarriedPlan> onItsOwnFrame(Plan plan) {
        if (plan instanceof InPlanePlan inPlane) {
            return inPlane.line().map(line -> new Observation.CarriedPlan(line.entry(), line.target()));
        }
        PointPx target = ((OutOfPlanePlan) plan).target();
        return Optional.of(new Observation.CarriedPlan(target, target));
    }

    private record Words(String title, String description) {}

    private static Scene scene(FrameView view, List<Item> items, List<Note> notes, Words words) {
        return new Scene(
                view.frame().columns(),
                view.frame().rows(),
                view.calibration().pixel(),
                items,
                notes,
                words.title(),
                Standing.DRAFT,
                words.description());
    }

    /** Scales and the carried plan, beneath what was observed. */
    private static List<Item> inPlane(
            InPlanePlan plan, Optional<Observation.CarriedPlan> path, Observation observation, FrameView view) {
        Optional<InPlanePlan.Line> carried = carried(plan, path);
        Stream<PointPx> entries =
                Stream.concat(observation.entry().stream(), carried.stream().map(InPlanePlan.Line::entry));
        List<Item> items = new ArrayList<>(ScaleItems.of(view, farthest(entries, view)));
        carried.ifPresent(line -> view.axis().ifPresent(axis -> items.addAll(PathItems.path(plan, line, axis))));
        return items;
    }

    private static OptionalDouble farthest(Stream<PointPx> entries, FrameView view) {
        return view.axis().map(axis -> entries.mapToDouble(axis::u).max()).orElse(OptionalDouble.empty());
    }

    private static List<Item> target(PointPx at, Plan plan) {
        List<String> lines = new ArrayList<>();
        lines.add(PathItems.text(plan, PlanQuantity.TARGET_DEPTH)
                .map(value -> "target, " + value + " deep")
                .orElse("target"));
        if (plan instanceof InPlanePlan inPlane && inPlane.line().isEmpty()) {
            lines.add("no path shown");
        }
        return List.of(new Item.Spot(Role.TARGET, at), Item.Label.at(Role.TARGET, lines, at));
    }

    /** The plan's line on the observed frame; first seen as far along it as on the planned frame. */
    private static Optional<InPlanePlan.Line> carried(InPlanePlan plan, Optional<Observation.CarriedPlan> path) {
        return path.map(carried -> {
            Optional<PointPx> firstSeen = plan.line()
                    .flatMap(line -> line.firstSeen().map(seen -> {
                        double share =
                                seen.distanceTo(line.entry()) / line.target().distanceTo(line.entry());
                        PointPx from = carried.entry();
                        PointPx to = carried.target();
                        return new PointPx(
                                from.column() + share * (to.column() - from.column()),
                                from.row() + share * (to.row() - from.row()));
                    }));
            return new InPlanePlan.Line(carried.entry(), carried.target(), firstSeen);
        });
    }
}
