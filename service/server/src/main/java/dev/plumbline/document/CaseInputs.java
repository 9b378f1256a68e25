// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.geometry.PixelSize;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Shape;
import dev.plumbline.observation.ObservationInput;
import dev.plumbline.observation.ObservationMarks;
import dev.plumbline.plan.Intent;
import dev.plumbline.plan.PlanInput;
import dev.plumbline.plan.PlanMarks;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.FrameRef;
import dev.plumbline.record.ObservedFrame;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A case document with its frames resolved: what the engine computes from. Every mark is checked against the frame it was
 * made on.
 */
public record CaseInputs(PlanInput plan, List<ObservationInput> observations) {
    /** Finds the size and scale of a frame that the case names; a stated frame is never asked for. */
    @FunctionalInterface
    public interface Frames {
        /** What measuring needs of the frame; a {@link Refusal} need not say where the case names it. */
        FrameGeometry geometry(FrameRef frame);
    }

    public CaseInputs {
        observations = List.copyOf(observations);
    }

    /**
     * The inputs of a case.
     *
     * @throws Refusal {@link Problem.MarkOutsideFrame}, or what finding a frame throws
     */
    public static CaseInputs of(CaseDocument document, Frames frames) {
        FrameGeometry planned = geometry(document.frame(), "/frame", frames);
        checkPlanMarks(document, planned);
        PlanInput plan = new PlanInput(
                document.approach(),
                planned,
                document.probe(),
                document.marks(),
                document.needle(),
                document.intent(),
                document.constraints(),
                document.uncertainty());
        List<ObservationInput> observations = new ArrayList<>();
        for (int i = 0; i < document.observations().size(); i++) {
            ObservedFrame observed = document.observations().get(i);
            String at = "/observations/" + i;
            FrameGeometry frame = geometry(observed.frame(), at + "/frame", frames);
            checkObservation(observed.marks(), at, frame);
            boolean samePicture = observed.frame().equals(document.frame());
            observations.add(new ObservationInput(observed.marks(), frame, samePicture));
        }
        return new CaseInputs(plan, observations);
    }

    private static FrameGeometry geometry(FrameRef ref, String pointer, Frames frames) {
        if (ref instanceof FrameRef.Stated stated) {
            PixelSize scale = new PixelSize(stated.mmPerColumn(), stated.mmPerRow());
            return new FrameGeometry(
                    stated.columns(), stated.rows(), List.of(), Optional.empty(), Optional.of(scale), "stated");
        }
        try {
            FrameGeometry frame = frames.geometry(ref).with(ref.scale());
            ref.scale().ifPresent(scale -> scale.check(pointer + "/scale", frame));
            return frame;
        } catch (Refusal refusal) {
            throw new Refusal(FrameProblem.at(pointer, refusal.problem()));
        }
    }

    private static void checkPlanMarks(CaseDocument document, FrameGeometry frame) {
        PlanMarks marks = document.marks();
        check(marks.target(), "/marks/target", frame);
        check(document.probe().midpoint(), "/probe/midpoint", frame);
        check(marks.skin(), "/marks/skin", frame);
        for (int i = 0; i < marks.nerves().size(); i++) {
            check(marks.nerves().get(i).shape(), "/marks/nerves/" + i, frame);
        }
        for (int i = 0; i < marks.hazards().size(); i++) {
            check(marks.hazards().get(i).shape(), "/marks/hazards/" + i, frame);
        }
        if (document.intent().orElse(null) instanceof Intent.EntryMark entry) {
            check(entry.at(), "/intent/entry", frame);
        }
    }

    private static void checkObservation(ObservationMarks marks, String at, FrameGeometry frame) {
        check(marks.shaft(), at + "/shaft", frame);
        check(marks.tip(), at + "/tip", frame);
        check(marks.midpoint(), at + "/midpoint", frame);
        check(marks.target(), at + "/target", frame);
        check(marks.skin(), at + "/skin", frame);
    }

    private static void check(Shape shape, String pointer, FrameGeometry frame) {
        if (shape instanceof Shape.Outline outline) {
            check(outline.points(), pointer + "/outline", frame);
        } else {
            check(((Shape.Disc) shape).center(), pointer + "/disc/center", frame);
        }
    }

    private static void check(List<PointPx> points, String pointer, FrameGeometry frame) {
        for (int i = 0; i < points.size(); i++) {
            check(points.get(i), pointer + "/" + i, frame);
        }
    }

    private static void check(Optional<PointPx> point, String pointer, FrameGeometry frame) {
        point.ifPresent(p -> check(p, pointer, frame));
    }

    private static void check(PointPx point, String pointer, FrameGeometry frame) {
        if (!frame.holds(point)) {
            throw new Refusal(new Problem.MarkOutsideFrame(pointer, frame.columns(), frame.rows()));
        }
    }
}
