// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static dev.plumbline.dicom.Concepts.ENTRY;
import static dev.plumbline.dicom.Concepts.FIRST_SEEN;
import static dev.plumbline.dicom.Concepts.MIDPOINT;
import static dev.plumbline.dicom.Concepts.PATH;
import static dev.plumbline.dicom.Concepts.SKIN;
import static dev.plumbline.dicom.Concepts.TARGET;

import dev.plumbline.geometry.Calibration;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Reading;
import dev.plumbline.geometry.Reason;
import dev.plumbline.plan.InPlanePlan;
import dev.plumbline.plan.Limit;
import dev.plumbline.plan.Plan;
import dev.plumbline.plan.PlanNote;
import dev.plumbline.plan.PlanQuantity;
import dev.plumbline.record.CaseDocument;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** TID 1501 with finding F-PLAN: the path that was chosen, what follows from it, and what it was judged against. */
final class PlanGroup {
    static final String NAME = "plan";

    /** A number that is always written and the marks that stand under it. */
    record Row(PlanQuantity measurand, List<Code> marks) {
        static Row of(PlanQuantity measurand, Code... marks) {
            return new Row(measurand, List.of(marks));
        }
    }

    static final List<Row> IN_PLANE = List.of(
            Row.of(PlanQuantity.ANGLE_TO_SKIN, PATH, SKIN),
            Row.of(PlanQuantity.TARGET_DEPTH, TARGET),
            Row.of(PlanQuantity.ENTRY_DISTANCE, MIDPOINT, ENTRY),
            Row.of(PlanQuantity.ENTRY_FROM_PROBE_EDGE),
            Row.of(PlanQuantity.PATH, PATH),
            Row.of(PlanQuantity.LEAD_IN),
            Row.of(PlanQuantity.FIRST_SEEN_DEPTH, FIRST_SEEN),
            Row.of(PlanQuantity.SHORTEST_NEEDLE),
            Row.of(PlanQuantity.NEEDLE_LEFT));
    static final List<Row> OUT_OF_PLANE = List.of(
            Row.of(PlanQuantity.ANGLE_TO_SKIN, SKIN),
            Row.of(PlanQuantity.TARGET_DEPTH, TARGET),
            Row.of(PlanQuantity.PUNCTURE_DISTANCE),
            Row.of(PlanQuantity.PUNCTURE_FROM_PROBE_EDGE),
            Row.of(PlanQuantity.ALONG_PROBE, MIDPOINT),
            Row.of(PlanQuantity.PATH),
            Row.of(PlanQuantity.SHORTEST_NEEDLE),
            Row.of(PlanQuantity.NEEDLE_LEFT));

    private final CaseDocument document;
    private final Plan plan;
    private final RecordSource.Placed planned;
    private final Optional<Calibration> calibration;
    private final FrameMarks marks;
    private final MeasurementGroup group;

    private PlanGroup(RecordSource source) {
        document = source.revision().document();
        plan = source.revision().comparison().plan();
        planned = source.planned();
        calibration = Scales.of(
                planned.frame().geometry(),
                document.probe(),
                List.of(document.marks().target()));
        marks = planned.marks()
                .point(TARGET, document.marks().target())
                .point(MIDPOINT, document.probe().midpoint())
                .line(SKIN, document.marks().skin());
        group = new MeasurementGroup("Plan", source.trackingUid(NAME), Concepts.PLAN, Codes.own("MM-PLAN"))
                .addAll(FindingSite.of(document.context()))
                .addAll(Algorithm.items(
                        "Plumbline plan",
                        source.installation().softwareVersion(),
                        Parameters.plan(document, calibration, OrderAttributes.beyond(source))));
    }

    static ContentItem of(RecordSource source) {
        return new PlanGroup(source).compose();
    }

    private ContentItem compose() {
        judgement();
        draw();
        for (Row row : plan instanceof InPlanePlan ? IN_PLANE : OUT_OF_PLANE) {
            group.rich(
                    Measurement.rich(Quantity.of(row.measurand()), reading(row.measurand()), marks.items(row.marks())));
        }
        return group.comment(Labels.angle("Plan", plan.readings().of(PlanQuantity.ANGLE_TO_SKIN)))
                .item();
    }

    /** Out-of-plane answers leave out how much needle is left; it follows from the path and the stated length. */
    private Reading reading(PlanQuantity measurand) {
        if (measurand != PlanQuantity.NEEDLE_LEFT || plan.readings().has(measurand)) {
            return plan.readings().of(measurand);
        }
        OptionalDouble length = document.needle().lengthMm();
        return plan.readings()
                .of(PlanQuantity.PATH)
                .fold(
                        path -> length.isPresent()
                                ? new Reading.Seen(length.getAsDouble() - path.value(), path.standardUncertainty())
                                : Reading.notSeen(Reason.NOT_MARKED),
                        notSeen -> notSeen);
    }

    /** The point stands before the line, so that a viewer's two labels do not cover each other. */
    private void draw() {
        GroupDrawing drawing = new GroupDrawing(marks, group, calibration, true);
        drawing.point(
                TARGET,
                document.marks().target(),
                Quantity.of(PlanQuantity.TARGET_DEPTH),
                plan.readings().of(PlanQuantity.TARGET_DEPTH));
        if (plan instanceof InPlanePlan inPlane) {
            inPlane.line().ifPresent(line -> draw(line, drawing));
        }
    }

    private void draw(InPlanePlan.Line line, GroupDrawing drawing) {
        DrawnPath.of(line.entry(), line.target(), planned.frame().geometry())
                .ifPresent(path -> drawing.path(path, plan.readings().of(PlanQuantity.PATH)));
        marks.point(ENTRY, onImage(line.entry()));
        marks.point(FIRST_SEEN, line.firstSeen().flatMap(this::onImage));
    }

    private Optional<PointPx> onImage(PointPx computed) {
        return Optional.of(computed.onGrid()).filter(planned.frame().geometry()::holds);
    }

    private void judgement() {
        group.says("PLAN-SOURCE", Codes.ofWord("plan sources", plan.source().word()));
        document.marks()
                .targetKind()
                .ifPresent(kind -> group.says("TARGET-KIND", Codes.ofWord("target kinds", kind.word())));
        group.says("PLAN-FITS", Concepts.yesOrNo(plan.feasible()));
        plan.judgement().binding().forEach(limit -> group.add(limit("BINDING", limit)));
        plan.judgement().unchecked().forEach(limit -> group.add(limit("UNCHECKED", limit)));
        for (PlanNote note : plan.judgement().notes()) {
            group.says("E-NOTE", Codes.ofWord("notes", note.word()));
        }
        Caveats.add(group, plan.judgement().assumptions(), plan.judgement().doubts());
    }

    private static ContentItem limit(String concept, Limit limit) {
        List<ContentItem> structure = limit
                .structure()
                .map(name -> ContentItem.text(Relation.HAS_PROPERTIES, Codes.own("STRUCTURE-NAME"), name))
                .stream()
                .toList();
        return ContentItem.code(
                        Relation.CONTAINS,
                        Codes.own(concept),
                        Codes.ofWord("limits", limit.kind().word()))
                .with(structure);
    }
}
