// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.document.CaseInputs;
import dev.plumbline.drawing.PlanDrawing;
import dev.plumbline.drawing.RasterDrawing;
import dev.plumbline.drawing.Scene;
import dev.plumbline.record.RecordRevision;
import java.awt.image.BufferedImage;
import java.util.Optional;

/** A frame with the plan, or with the first observation made on it beside the plan, drawn on it. */
final class AnnotatedFrame {
    private AnnotatedFrame() {}

    static BufferedImage draw(RecordSource source, CaseInputs inputs, FramesUsed.Use use) {
        RecordRevision revision = source.revision();
        Scene scene = use.observations().isEmpty()
                ? PlanDrawing.of(inputs.plan(), revision.comparison())
                : observation(revision, inputs, use.observations().get(0));
        return RasterDrawing.image(
                revision.signed() ? scene.signed() : scene,
                Optional.of(use.placed().frame().rendered()));
    }

    private static Scene observation(RecordRevision revision, CaseInputs inputs, int index) {
        return PlanDrawing.ofObservation(inputs.observations().get(index), inputs.plan(), revision.comparison(), index);
    }
}
