// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.document.CaseInputs;
import dev.plumbline.drawing.PlanDrawing;
import dev.plumbline.drawing.RasterDrawing;
import dev.plumbline.drawing.Scene;
import dev.plumbline.drawing.SvgDrawing;
import dev.plumbline.record.FrameRef;
import dev.plumbline.record.RecordRevision;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * One frame of a record with the plan, or with every observation made on it beside the plan, drawn on it.
 *
 * @param frame the picture; without one the drawing stands alone, true to scale on paper
 * @param observations ids of those that are drawn
 */
public record RecordDrawing(Scene scene, Optional<BufferedImage> frame, List<String> observations) {
    public RecordDrawing {
        observations = List.copyOf(observations);
    }

    /** The drawings of a record, one for each frame used, the planned one first. */
    public static List<RecordDrawing> all(
            RecordRevision revision, CaseInputs inputs, Function<FrameRef, Optional<BufferedImage>> frames) {
        return FramesUsed.observationsByFrame(revision.document()).entrySet().stream()
                .map(entry -> new RecordDrawing(
                        scene(revision, inputs, entry.getValue()),
                        frames.apply(entry.getKey()),
                        entry.getValue().stream()
                                .map(index -> revision.comparison()
                                        .observations()
                                        .get(index)
                                        .id())
                                .toList()))
                .toList();
    }

    private static Scene scene(RecordRevision revision, CaseInputs inputs, List<Integer> observations) {
        Scene scene = observations.isEmpty()
                ? PlanDrawing.of(inputs.plan(), revision.comparison())
                : observed(revision, inputs, observations);
        return revision.signed() ? scene.signed() : scene;
    }

    private static Scene observed(RecordRevision revision, CaseInputs inputs, List<Integer> observations) {
        List<PlanDrawing.Made> made = observations.stream()
                .map(index -> new PlanDrawing.Made(inputs.observations().get(index), index))
                .toList();
        return PlanDrawing.ofObservations(made, inputs.plan(), revision.comparison());
    }

    /** What is drawn, in words. */
    String caption() {
        return observations.isEmpty() ? "Plan" : "Observation " + String.join(", ", observations) + " beside the plan";
    }

    RasterDrawing.Painted painted() {
        return RasterDrawing.painted(scene, frame);
    }

    String svg() {
        return SvgDrawing.text(scene, frame);
    }
}
