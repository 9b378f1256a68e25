// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import dev.plumbline.deviation.Comparison;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.observation.Observation;
import dev.plumbline.observation.ObservationInput;
import dev.plumbline.plan.InPlanePlan;
import dev.plumbline.plan.Plan;
import dev.plumbline.plan.PlanInput;
import dev.plumbline.plan.PlanQuantity;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
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
        return ofObservations(List.of(new Made(observed, index)), input, comparison);
    }

    /**
     * An observation by its place.
     *
     * @param index in the comparison
     */
    public record Made(ObservationInput input, int index) {}

    /** Every observation made on one and the same frame, at least one, and the plan as above. */
    public static Scene ofObservations(List<Made> onFrame, PlanInput input, Comparison comparison) {
        Plan plan = comparison.plan();
        List<SeenOnFrame> all = onFrame.stream()
                .map(made -> SeenOnFrame.of(made, input, comparison, onFrame.size() > 1))
                .toList();
        SeenOnFrame first = all.get(0);
        FrameView view = first.view();
        List<Item> items = new ArrayList<>();
        if (first.made().input().samePictureAsPlan()) {
            items.addAll(MarkedItems.of(input.marks(), view.calibration().pixel()));
        }
        if (plan instanceof InPlanePlan inPlane) {
            items.addAll(inPlane(inPlane, all));
            all.forEach(seen -> items.addAll(seen.items().inPlane(seen.carried())));
        } else {
            items.addAll(ScaleItems.of(view, OptionalDouble.empty()));
            all.forEach(seen -> items.addAll(seen.items().crossing(seen.carried())));
        }
        all.stream().flatMap(seen -> seen.target().stream()).distinct().forEach(at -> items.addAll(target(at, plan)));
        return scene(view, items, notes(plan, all), words(all));
    }

    private static List<Note> notes(Plan plan, List<SeenOnFrame> all) {
        return Notes.of(
                plan,
                all.stream()
                        .map(seen -> new Notes.Compared(seen.observation(), seen.deviation()))
                        .toList(),
                all.get(0).view());
    }

    private static Words words(List<SeenOnFrame> all) {
        String ids =
                all.stream().map(seen -> Wording.name(seen.observation().id())).collect(Collectors.joining(", "));
        if (all.size() > 1) {
            return new Words(
                    "Observed, " + all.size() + " times on this frame",
                    "Planned, observed and difference; observations " + ids + ".");
        }
        String title = all.get(0)
                .observation()
                .phase()
                .map(phase -> "Observed, " + Wording.spelledOut(phase.word()))
                .orElse("Observed");
        return new Words(title, "Planned, observed and difference; observation " + ids + ".");
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

    /** Scales and the carried plan, each place of it once, beneath what was observed. */
    private static List<Item> inPlane(InPlanePlan plan, List<SeenOnFrame> all) {
        FrameView view = all.get(0).view();
        List<InPlanePlan.Line> lines = all.stream()
                .flatMap(seen -> carried(plan, seen.carried()).stream())
                .distinct()
                .toList();
        Stream<PointPx> entries = Stream.concat(
                all.stream().flatMap(seen -> seen.observation().entry().stream()),
                lines.stream().map(InPlanePlan.Line::entry));
        List<Item> items = new ArrayList<>(ScaleItems.of(view, farthest(entries, view)));
        lines.forEach(line -> view.axis().ifPresent(axis -> items.addAll(PathItems.path(plan, line, axis))));
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
