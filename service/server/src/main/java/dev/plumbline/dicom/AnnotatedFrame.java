// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.document.CaseInputs;
import dev.plumbline.drawing.PlanDrawing;
import dev.plumbline.drawing.RasterDrawing;
import dev.plumbline.drawing.Scene;
import dev.plumbline.record.RecordRevision;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.Optional;

/** A frame with the plan, or with every observation made on it beside the plan, drawn on it. */
final class AnnotatedFrame {
    private AnnotatedFrame() {}

    static BufferedImage draw(RecordSource source, CaseInputs inputs, FramesUsed.Use use) {
        RecordRevision revision = source.revision();
        Scene scene = use.observations().isEmpty()
                ? PlanDrawing.of(inputs.plan(), revision.comparison())
                : observations(revision, inputs, use.observations());
        return RasterDrawing.image(
                revision.signed() ? scene.signed() : scene,
                Optional.of(use.placed().frame().rendered()));
    }

    private static Scene observations(RecordRevision revision, CaseInputs inputs, List<Integer> indices) {
        List<PlanDrawing.Made> made = indices.stream()
                .map(index -> new PlanDrawing.Made(inputs.observations().get(index), index))
                .toList();
        return PlanDrawing.ofObservations(made, inputs.plan(), revision.comparison());
    }
}
