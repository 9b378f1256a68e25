// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.geometry.InputUncertainty;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Probe;
import dev.plumbline.geometry.Shape;
import dev.plumbline.geometry.Side;
import dev.plumbline.needle.Needle;
import dev.plumbline.observation.ObservationMarks;
import dev.plumbline.observation.Phase;
import dev.plumbline.plan.Approach;
import dev.plumbline.plan.Constraints;
import dev.plumbline.plan.Hazard;
import dev.plumbline.plan.Intent;
import dev.plumbline.plan.Nerve;
import dev.plumbline.plan.PlanMarks;
import dev.plumbline.procedure.Laterality;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.Context;
import dev.plumbline.record.FrameRef;
import dev.plumbline.record.ObservedFrame;
import dev.plumbline.record.Signature;
import dev.plumbline.samples.Sample;
import dev.plumbline.samples.SampleSet;
import dev.plumbline.samples.SampleTruth;
import java.time.OffsetDateTime;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Function;

/** Ready case documents on the samples, marked as a person with perfect sight would mark them. */
public final class SampleCases {
    private static final String PERFORMER = "Sample^Performer";

    private final SampleSet set;
    private final Function<Sample, FrameRef> frames;

    /** @param frames how a sample's first frame is referred to */
    public SampleCases(SampleSet set, Function<Sample, FrameRef> frames) {
        this.set = set;
        this.frames = frames;
    }

    /** For documents that lie beside the files of the set. */
    public static SampleCases besideFiles(SampleSet set) {
        return new SampleCases(set, sample -> new FrameRef.File(sample.name() + ".dcm", 1));
    }

    /** For frames that a service holds. */
    public static SampleCases held(SampleSet set) {
        SampleObjects objects = new SampleObjects(set);
        return new SampleCases(set, sample -> new FrameRef.Held(objects.sopInstanceUid(sample), 1));
    }

    /** By file name without its ending. */
    public Map<String, CaseDocument> all() {
        Map<String, CaseDocument> cases = new LinkedHashMap<>();
        cases.put("in-plane", inPlane());
        cases.put("in-plane-two-observations", inPlaneTwoObservations());
        cases.put("in-plane-proposal", inPlaneProposal());
        cases.put("in-plane-tip-not-seen", inPlaneTipNotSeen());
        cases.put("out-of-plane", outOfPlane());
        return cases;
    }

    /** 30 mm deep, entry meant 45 mm from the middle of the probe; the needle went in steeper. Signed. */
    public CaseDocument inPlane() {
        return inPlane(List.of(shaft("obs-1", Phase.FINAL_TIP, set.inPlaneNeedle())), Optional.of(signature()));
    }

    public CaseDocument inPlaneTwoObservations() {
        return inPlane(
                List.of(
                        shaft("obs-1", Phase.FINAL_TIP, set.inPlaneNeedle()),
                        shaft("obs-2", Phase.AFTER_SPREAD, set.inPlaneAfterSpread())),
                Optional.of(signature()));
    }

    /** Only the near part of the shaft was seen, so the tip is nobody's knowledge; a draft. */
    public CaseDocument inPlaneTipNotSeen() {
        return inPlane(List.of(shaft("obs-1", Phase.FINAL_TIP, set.nearPartOfShaft())), Optional.empty());
    }

    /** Nothing decided yet: a path is proposed. */
    public CaseDocument inPlaneProposal() {
        CaseDocument decided = inPlane(List.of(), Optional.empty());
        return new CaseDocument(
                decided.caseId(),
                decided.approach(),
                decided.frame(),
                decided.probe(),
                decided.marks(),
                decided.needle(),
                Optional.empty(),
                decided.constraints(),
                decided.uncertainty(),
                decided.observations(),
                decided.context(),
                decided.signature());
    }

    /** 20 mm deep, puncture meant 20 mm from the beam; the dot stands a little deeper. Signed. */
    public CaseDocument outOfPlane() {
        SampleTruth.NeedleTruth seen = truth(set.outOfPlaneNeedle()).needle().orElseThrow();
        ObservationMarks dot = new ObservationMarks(
                "obs-1",
                Optional.of(Phase.FINAL_TIP),
                List.of(),
                Optional.of(seen.end().onGrid()),
                Optional.of(true),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                seen.lengths().punctureDistanceMm());
        Sample planned = set.outOfPlanePlan();
        return new CaseDocument(
                Optional.empty(),
                Approach.OUT_OF_PLANE,
                frames.apply(planned),
                probe(truth(planned), Optional.empty()),
                marks(truth(planned)),
                needle(),
                Optional.of(new Intent.PunctureDistance(20)),
                Constraints.NOTHING_STATED,
                InputUncertainty.NOTHING_STATED,
                List.of(new ObservedFrame(dot, frames.apply(set.outOfPlaneNeedle()))),
                context(planned),
                Optional.of(signature()));
    }

    private CaseDocument inPlane(List<ObservedFrame> observations, Optional<Signature> signature) {
        Sample planned = set.inPlanePlan();
        return new CaseDocument(
                Optional.empty(),
                Approach.IN_PLANE,
                frames.apply(planned),
                probe(truth(planned), Optional.of(Side.RIGHT)),
                marks(truth(planned)),
                needle(),
                Optional.of(new Intent.EntryDistance(45)),
                Constraints.NOTHING_STATED,
                InputUncertainty.NOTHING_STATED,
                observations,
                context(planned),
                signature);
    }

    private static SampleTruth truth(Sample sample) {
        return sample.scene().truths().get(0);
    }

    private static Probe probe(SampleTruth truth, Optional<Side> needleSide) {
        return new Probe(
                Optional.of(truth.probe().kind()),
                OptionalDouble.of(truth.probe().footprintMm()),
                Optional.of(truth.probe().midpoint().onGrid()),
                needleSide,
                OptionalDouble.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty());
    }

    private static PlanMarks marks(SampleTruth truth) {
        return new PlanMarks(
                truth.target().at().onGrid(),
                Optional.of(truth.target().kind()),
                truth.skin().stream().map(PointPx::onGrid).toList(),
                truth.structures().nerves().stream()
                        .map(nerve -> new Nerve(nerve.name(), onGrid(nerve.shape())))
                        .toList(),
                truth.structures().hazards().stream()
                        .map(hazard ->
                                new Hazard(hazard.name(), hazard.kind(), hazard.marginMm(), onGrid(hazard.shape())))
                        .toList());
    }

    private static Shape onGrid(Shape shape) {
        return shape instanceof Shape.Outline outline
                ? new Shape.Outline(
                        outline.points().stream().map(PointPx::onGrid).toList())
                : new Shape.Disc(((Shape.Disc) shape).center().onGrid(), ((Shape.Disc) shape).radiusMm());
    }

    private static Needle needle() {
        return new Needle(OptionalInt.of(22), OptionalDouble.of(80), Optional.of(true));
    }

    /** Two marks well inside the visible part; the tip where it is seen. */
    private ObservedFrame shaft(String id, Phase phase, Sample sample) {
        SampleTruth.NeedleTruth needle = truth(sample).needle().orElseThrow();
        PointPx shallow = needle.visible().get(0);
        PointPx deep = needle.visible().get(1);
        ObservationMarks marks = new ObservationMarks(
                id,
                Optional.of(phase),
                List.of(between(shallow, deep, 0.06), between(shallow, deep, 0.92)),
                needle.tipVisible() ? Optional.of(needle.end().onGrid()) : Optional.empty(),
                needle.tipVisible() ? Optional.of(true) : Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                OptionalDouble.empty());
        return new ObservedFrame(marks, frames.apply(sample));
    }

    private static PointPx between(PointPx from, PointPx to, double share) {
        return new PointPx(
                        from.column() + share * (to.column() - from.column()),
                        from.row() + share * (to.row() - from.row()))
                .onGrid();
    }

    private static Context context(Sample sample) {
        return new Context(
                Optional.of(sample.scene().block()),
                Optional.of(Laterality.RIGHT),
                Optional.of(new Context.Person(PERFORMER, Optional.of("performer"))));
    }

    private static Signature signature() {
        return new Signature(
                PERFORMER,
                Optional.of("Sample Hospital"),
                Optional.of("performer"),
                OffsetDateTime.parse("2026-01-05T11:15:00+01:00"));
    }
}
