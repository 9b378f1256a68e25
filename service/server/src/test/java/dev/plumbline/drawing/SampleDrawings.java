// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import dev.plumbline.deviation.Comparison;
import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.geometry.InputUncertainty;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Probe;
import dev.plumbline.geometry.Side;
import dev.plumbline.needle.Needle;
import dev.plumbline.observation.ObservationInput;
import dev.plumbline.observation.ObservationMarks;
import dev.plumbline.observation.Phase;
import dev.plumbline.plan.Approach;
import dev.plumbline.plan.Constraints;
import dev.plumbline.plan.Intent;
import dev.plumbline.plan.PlanInput;
import dev.plumbline.plan.PlanMarks;
import dev.plumbline.samples.Sample;
import dev.plumbline.samples.SampleFrame;
import dev.plumbline.samples.SampleSet;
import dev.plumbline.samples.SampleTruth;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** Drawings over synthetic B-mode frames, with the marks that a person with perfect sight would make. */
record SampleDrawings(Scene plan, BufferedImage planned, Scene observation, BufferedImage observed) {
    private static final SampleSet SET = new SampleSet(1);

    static SampleDrawings inPlane() {
        return of(SET.inPlanePlan(), SET.inPlaneNeedle(), Optional.of(new Intent.EntryDistance(45)));
    }

    static SampleDrawings outOfPlane() {
        return of(SET.outOfPlanePlan(), SET.outOfPlaneNeedle(), Optional.of(new Intent.PunctureDistance(20)));
    }

    private static SampleDrawings of(Sample before, Sample after, Optional<Intent> intent) {
        SampleTruth planTruth = before.scene().truths().get(0);
        SampleTruth needleTruth = after.scene().truths().get(0);
        Approach approach = needleTruth.needle().orElseThrow().approach();
        PlanInput input = input(before, planTruth, approach, intent);
        ObservationInput seen = observation(after, needleTruth);
        Comparison compared = Comparison.of(input, List.of(seen));
        return new SampleDrawings(
                PlanDrawing.of(input, compared),
                picture(before),
                PlanDrawing.ofObservation(seen, input, compared, 0),
                picture(after));
    }

    private static FrameGeometry geometry(Sample sample, SampleTruth truth) {
        return new FrameGeometry(
                sample.scene().layout().columns(),
                sample.scene().layout().rows(),
                truth.scale().regions(),
                truth.scale().pixelSpacing(),
                Optional.empty(),
                "scanner");
    }

    private static PlanInput input(Sample sample, SampleTruth truth, Approach approach, Optional<Intent> intent) {
        Probe probe = new Probe(
                Optional.of(truth.probe().kind()),
                OptionalDouble.of(truth.probe().footprintMm()),
                Optional.of(truth.probe().midpoint()),
                Optional.of(Side.RIGHT),
                OptionalDouble.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                approach == Approach.OUT_OF_PLANE ? OptionalDouble.of(9) : OptionalDouble.empty(),
                Optional.empty());
        PlanMarks marks = new PlanMarks(
                truth.target().at(),
                Optional.of(truth.target().kind()),
                truth.skin(),
                truth.structures().nerves(),
                truth.structures().hazards());
        return new PlanInput(
                approach,
                geometry(sample, truth),
                probe,
                marks,
                new Needle(OptionalInt.of(22), OptionalDouble.of(80), Optional.empty()),
                intent,
                Constraints.NOTHING_STATED,
                InputUncertainty.NOTHING_STATED);
    }

    private static ObservationInput observation(Sample sample, SampleTruth truth) {
        SampleTruth.NeedleTruth needle = truth.needle().orElseThrow();
        List<PointPx> shaft = needle.visible().isEmpty()
                ? List.of()
                : List.of(
                        needle.visible().get(0),
                        DrawnCase.between(needle.visible().get(0), needle.end(), 0.5),
                        DrawnCase.between(needle.visible().get(0), needle.end(), 0.97));
        ObservationMarks marks = new ObservationMarks(
                "obs-1",
                Optional.of(Phase.FINAL_TIP),
                shaft,
                Optional.of(needle.end()),
                Optional.of(needle.approach() == Approach.IN_PLANE),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                needle.lengths().punctureDistanceMm());
        return new ObservationInput(marks, geometry(sample, truth), false);
    }

    private static BufferedImage picture(Sample sample) {
        SampleFrame frame = SET.render(sample).get(0);
        BufferedImage image = new BufferedImage(frame.columns(), frame.rows(), BufferedImage.TYPE_INT_RGB);
        for (int row = 0; row < frame.rows(); row++) {
            for (int column = 0; column < frame.columns(); column++) {
                int grey = frame.level(column, row);
                image.setRGB(column, row, grey << 16 | grey << 8 | grey);
            }
        }
        return image;
    }
}
