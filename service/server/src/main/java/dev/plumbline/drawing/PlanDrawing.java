// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import dev.plumbline.deviation.Comparison;
import dev.plumbline.deviation.Deviation;
import dev.plumbline.geometry.PixelSize;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Reading;
import dev.plumbline.observation.Observation;
import dev.plumbline.observation.ObservationInput;
import dev.plumbline.observation.ObservationQuantity;
import dev.plumbline.plan.InPlanePlan;
import dev.plumbline.plan.OutOfPlanePlan;
import dev.plumbline.plan.Plan;
import dev.plumbline.plan.PlanInput;
import dev.plumbline.plan.PlanQuantity;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What there is to see of a plan, and of an observation beside its plan.
 *
 * <p>A scene says that it is a draft until {@link Scene#signed()} is asked of it.
 */
public final class PlanDrawing {
    private static final String CAUTION = "Only what was marked was checked.";
    private static final String UNCERTAINTY = "\u00b1 is the expanded uncertainty (k = 2).";

    private PlanDrawing() {}

    /** The plan on the frame it was made on. */
    public static Scene of(PlanInput input, Comparison comparison) {
        Plan plan = comparison.plan();
        FrameView view = FrameView.planned(input, plan);
        PixelSize pixel = view.calibration().pixel();
        PointPx target = input.marks().target();
        List<Item> items = new ArrayList<>(MarkedItems.of(input.marks(), pixel));
        if (plan instanceof InPlanePlan inPlane) {
            List<Item> path = PathItems.onPlannedFrame(inPlane, view);
            items.addAll(0, PathItems.fan(inPlane, view));
            items.addAll(ScaleItems.of(view, farthest(inPlane.line().map(InPlanePlan.Line::entry), view), true));
            items.addAll(path);
        } else {
            items.addAll(ScaleItems.of(view, 0, false));
        }
        items.addAll(target(target, plan));
        return new Scene(
                view.frame().columns(),
                view.frame().rows(),
                pixel,
                items,
                planNotes(plan, view),
                plan instanceof InPlanePlan ? "Needle plan, in-plane" : "Needle plan, out-of-plane",
                Standing.DRAFT,
                plan.text());
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
        FrameView view = FrameView.observed(observed, input, comparison, index);
        PixelSize pixel = view.calibration().pixel();
        List<Item> items = new ArrayList<>();
        if (observed.samePictureAsPlan()) {
            items.addAll(MarkedItems.of(input.marks(), pixel));
        }
        ObservedItems seen = new ObservedItems(observed.marks(), observation, deviation, view);
        if (plan instanceof InPlanePlan inPlane) {
            Optional<InPlanePlan.Line> carried = carried(inPlane, observation);
            double farthest =
                    Math.max(farthest(observation.entry(), view), farthest(carried.map(InPlanePlan.Line::entry), view));
            items.addAll(ScaleItems.of(view, farthest, true));
            carried.ifPresent(line -> items.addAll(PathItems.path(inPlane, line, view)));
            items.addAll(seen.inPlane());
        } else {
            items.addAll(ScaleItems.of(view, 0, false));
            items.addAll(seen.crossing());
        }
        observed.marks()
                .target()
                .or(() -> observation.carriedPlan().map(Observation.CarriedPlan::target))
                .ifPresent(at -> items.addAll(target(at, plan)));
        return new Scene(
                view.frame().columns(),
                view.frame().rows(),
                pixel,
                items,
                observedNotes(plan, observation, deviation, view),
                observation
                        .phase()
                        .map(phase -> "Observed, " + Wording.spelledOut(phase.word()))
                        .orElse("Observed"),
                Standing.DRAFT,
                "Planned, observed and difference; " + Wording.name(observation.id()) + ".");
    }

    private static double farthest(Optional<PointPx> entry, FrameView view) {
        return entry.map(view.axis()::u).orElse(0.0);
    }

    private static List<Item> target(PointPx at, Plan plan) {
        String depth = PathItems.text(plan, PlanQuantity.TARGET_DEPTH)
                .map(value -> "target, " + value + " deep")
                .orElse("target");
        return List.of(new Item.Spot(Role.TARGET, at), Item.Label.at(Role.TARGET, List.of(depth), at));
    }

    /** The plan's line on the observed frame; first seen as far along it as on the planned frame. */
    private static Optional<InPlanePlan.Line> carried(InPlanePlan plan, Observation observation) {
        return observation.carriedPlan().map(carried -> {
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

    private static List<Note> planNotes(Plan plan, FrameView view) {
        List<Note> notes = new ArrayList<>();
        if (plan.source() == Plan.Source.PROPOSED) {
            notes.add(new Note.Badge("Proposed, not confirmed", true));
        }
        notes.add(NumbersTable.ofPlan(plan));
        if (plan instanceof OutOfPlanePlan) {
            notes.add(sideView(plan, Optional.empty(), view));
        }
        notes.addAll(JudgementNotes.of(plan));
        notes.add(new Note.Legend());
        notes.add(new Note.Paragraph(UNCERTAINTY, true));
        notes.addAll(JudgementNotes.assumptions(plan.judgement().assumptions()));
        notes.addAll(closing(view));
        return notes;
    }

    private static List<Note> observedNotes(Plan plan, Observation observation, Deviation deviation, FrameView view) {
        List<Note> notes = new ArrayList<>();
        notes.add(NumbersTable.compared(plan, observation, deviation));
        notes.add(new Note.Paragraph(DifferenceWords.LARGER + "; " + DifferenceWords.NOT_LARGER + ".", true));
        if (plan instanceof OutOfPlanePlan) {
            notes.add(sideView(plan, Optional.of(observation), view));
        }
        notes.addAll(JudgementNotes.doubts(observation.doubts()));
        notes.add(new Note.Legend());
        notes.add(new Note.Paragraph(UNCERTAINTY, true));
        notes.addAll(JudgementNotes.assumptions(observation.assumptions()));
        notes.addAll(closing(view));
        return notes;
    }

    private static List<Note> closing(FrameView view) {
        List<Note> notes = new ArrayList<>();
        notes.add(new Note.Paragraph(FrameScale.words(view.calibration()), true));
        PixelSize pixel = view.calibration().pixel();
        if (Math.abs(pixel.mmPerRow() / pixel.mmPerColumn() - 1) > 0.01) {
            notes.add(new Note.Paragraph(
                    "Pixels are not square: angles are computed in millimetres and look different over the frame.",
                    true));
        }
        notes.add(new Note.Paragraph(CAUTION, false));
        return notes;
    }

    private static Note sideView(Plan plan, Optional<Observation> observation, FrameView view) {
        return new Note.SideView(
                crossing(
                        plan.readings().of(PlanQuantity.PUNCTURE_DISTANCE),
                        plan.readings().of(PlanQuantity.TARGET_DEPTH),
                        plan.readings().of(PlanQuantity.ANGLE_TO_SKIN)),
                observation.flatMap(seen -> crossing(
                        seen.readings().of(ObservationQuantity.PUNCTURE_DISTANCE),
                        seen.readings().of(ObservationQuantity.CROSSING_DEPTH),
                        seen.readings().of(ObservationQuantity.ANGLE_TO_SKIN))),
                view.housingHalfThicknessMm());
    }

    private static Optional<Note.Crossing> crossing(Reading distance, Reading depth, Reading angle) {
        if (distance instanceof Reading.Seen d && depth instanceof Reading.Seen w) {
            String words = Wording.value(angle, PlanQuantity.ANGLE_TO_SKIN).orElse("");
            return Optional.of(new Note.Crossing(d.value(), w.value(), words));
        }
        return Optional.empty();
    }
}
