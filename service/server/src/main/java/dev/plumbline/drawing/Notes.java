// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import dev.plumbline.deviation.Deviation;
import dev.plumbline.geometry.Reading;
import dev.plumbline.geometry.Readings;
import dev.plumbline.observation.Observation;
import dev.plumbline.observation.ObservationQuantity;
import dev.plumbline.plan.OutOfPlanePlan;
import dev.plumbline.plan.Plan;
import dev.plumbline.plan.PlanQuantity;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** What stands beside the picture of a plan and of an observation. */
final class Notes {
    private static final String CAUTION = "Only what was marked was checked.";
    private static final String UNCERTAINTY = "\u00b1 is the expanded uncertainty (k = 2).";
    private static final String NOT_SQUARE =
            "Pixels are not square: angles are computed in millimetres and look different over the frame.";

    private Notes() {}

    static List<Note> of(Plan plan, FrameView view) {
        List<Note> notes = new ArrayList<>();
        if (plan.source() == Plan.Source.PROPOSED && NumbersTable.givesAngle(plan)) {
            notes.add(new Note.Badge("Proposed, not confirmed", true));
        }
        notes.add(NumbersTable.ofPlan(plan));
        notes.add(new Note.Paragraph(UNCERTAINTY, true));
        if (plan instanceof OutOfPlanePlan outOfPlane) {
            notes.add(sideView(plan, Optional.empty(), view));
            stepDown(outOfPlane).ifPresent(notes::add);
        }
        notes.addAll(JudgementNotes.of(plan));
        notes.add(new Note.Legend());
        notes.addAll(JudgementNotes.assumptions(plan.judgement().assumptions()));
        notes.addAll(closing(view));
        return notes;
    }

    /** An observation and how it differs from the plan. */
    record Compared(Observation observation, Deviation deviation) {}

    static List<Note> of(Plan plan, List<Compared> all, FrameView view) {
        List<Note> notes = new ArrayList<>();
        for (Compared one : all) {
            Observation observation = one.observation();
            if (all.size() > 1) {
                notes.add(new Note.Badge(heading(observation), false));
            }
            notes.addAll(JudgementNotes.doubts(observation.doubts()));
            notes.add(NumbersTable.compared(plan, observation, one.deviation()));
            observation.rotationWords().ifPresent(words -> notes.add(new Note.Paragraph(words, false)));
        }
        notes.add(new Note.Paragraph(
                UNCERTAINTY + " " + DifferenceWords.LARGER + "; " + DifferenceWords.NOT_LARGER + ".", true));
        if (plan instanceof OutOfPlanePlan) {
            all.forEach(one -> notes.add(sideView(plan, Optional.of(one.observation()), view)));
        }
        notes.add(new Note.Legend());
        notes.addAll(JudgementNotes.assumptions(all.stream()
                .flatMap(one -> one.observation().assumptions().stream())
                .distinct()
                .toList()));
        notes.addAll(closing(view));
        return notes;
    }

    private static String heading(Observation observation) {
        return Wording.name(observation.id())
                + observation
                        .phase()
                        .map(phase -> ", " + Wording.spelledOut(phase.word()))
                        .orElse("");
    }

    private static List<Note> closing(FrameView view) {
        List<Note> notes = new ArrayList<>();
        notes.add(new Note.Paragraph(FrameScale.words(view.calibration()), true));
        for (String doubt : view.calibration().doubts()) {
            notes.add(new Note.Paragraph("Look again at the scale: " + doubt, false));
        }
        if (!FrameScale.isSquare(view.calibration().pixel())) {
            notes.add(new Note.Paragraph(NOT_SQUARE, true));
        }
        notes.add(new Note.Paragraph(CAUTION, false));
        return notes;
    }

    private static Optional<Note> stepDown(OutOfPlanePlan plan) {
        if (plan.stepDown().size() < 2) {
            return Optional.empty();
        }
        String steps = plan.stepDown().stream()
                .map(step -> Wording.value(step.angleToSkinDeg().value(), PlanQuantity.ANGLE_TO_SKIN) + " for "
                        + Wording.mm(step.crossingDepthMm().value()))
                .collect(Collectors.joining(", "));
        return Optional.of(new Note.Paragraph(
                "Stepping down from the same puncture, angle for crossing depth: " + steps + ".", false));
    }

    private static Note sideView(Plan plan, Optional<Observation> observation, FrameView view) {
        boolean proposed = plan.source() == Plan.Source.PROPOSED;
        Readings<PlanQuantity> planned = plan.readings();
        return new Note.SideView(
                crossing(
                        proposed ? Role.PROPOSED_PATH : Role.PLAN_PATH,
                        planned.of(PlanQuantity.PUNCTURE_DISTANCE),
                        planned.of(PlanQuantity.TARGET_DEPTH),
                        planned.of(PlanQuantity.ANGLE_TO_SKIN)),
                observation
                        .map(Observation::readings)
                        .flatMap(seen -> crossing(
                                Role.OBSERVED_PATH,
                                seen.of(ObservationQuantity.PUNCTURE_DISTANCE),
                                seen.of(ObservationQuantity.CROSSING_DEPTH),
                                seen.of(ObservationQuantity.ANGLE_TO_SKIN))),
                view.probe().housingHalfThicknessMm());
    }

    private static Optional<Note.Crossing> crossing(Role path, Reading distance, Reading depth, Reading angle) {
        if (distance instanceof Reading.Seen d && depth instanceof Reading.Seen w) {
            String words = Wording.value(angle, PlanQuantity.ANGLE_TO_SKIN).orElse("");
            return Optional.of(new Note.Crossing(path, d.value(), w.value(), words));
        }
        return Optional.empty();
    }
}
