// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.geometry.NamedMark;
import dev.plumbline.geometry.PixelSize;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Repeat;
import dev.plumbline.observation.ObservationInput;
import dev.plumbline.plan.Approach;
import dev.plumbline.plan.PlanInput;
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
     * @throws Refusal {@link Problem.MarkOutsideFrame}, what finding a frame throws, or where nobody has said the approach
     */
    public static CaseInputs of(CaseDocument document, Frames frames) {
        Approach approach = document.approach();
        PlanInput plan = new PlanInput(
                approach,
                planned(document, frames),
                document.probe(),
                document.marks(),
                document.needle(),
                document.intent(),
                document.constraints(),
                document.uncertainty());
        return new CaseInputs(plan, observed(document, frames));
    }

    /**
     * Checks the marks of a case that is still being told, of which perhaps nobody has said the approach.
     *
     * @throws Refusal as {@link #of} does, but for an approach that is not said
     */
    public static void check(CaseDocument document, Frames frames) {
        planned(document, frames);
        observed(document, frames);
    }

    private static FrameGeometry planned(CaseDocument document, Frames frames) {
        FrameGeometry planned = geometry(document.frame(), "/frame", frames);
        check(StatedMarks.ofPlan(document), planned);
        return planned;
    }

    private static List<ObservationInput> observed(CaseDocument document, Frames frames) {
        List<ObservationInput> observations = new ArrayList<>();
        for (int i = 0; i < document.observations().size(); i++) {
            ObservedFrame observed = document.observations().get(i);
            String at = "/observations/" + i;
            FrameGeometry frame = geometry(observed.frame(), at + "/frame", frames);
            check(StatedMarks.ofObservation(document, i), frame);
            boolean samePicture = observed.frame().equals(document.frame()) && identifies(observed.frame());
            observations.add(new ObservationInput(observed.marks(), frame, samePicture));
        }
        return observations;
    }

    /** A stated size and scale may be those of any number of pictures. */
    private static boolean identifies(FrameRef frame) {
        return !(frame instanceof FrameRef.Stated);
    }

    /** What measuring needs of a frame that the case names at a place. */
    static FrameGeometry geometry(FrameRef ref, String pointer, Frames frames) {
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

    private static void check(List<NamedMark> marks, FrameGeometry frame) {
        for (NamedMark mark : marks) {
            check(mark.at(), mark.pointer(), frame);
            List<Repeat> repeats = mark.at().repeats();
            for (int i = 0; i < repeats.size(); i++) {
                check(repeats.get(i).at(), mark.pointer() + "/repeats/" + i, frame);
            }
        }
    }

    private static void check(PointPx point, String pointer, FrameGeometry frame) {
        if (!frame.holds(point)) {
            throw new Refusal(new Problem.MarkOutsideFrame(pointer, frame.columns(), frame.rows()));
        }
    }
}
