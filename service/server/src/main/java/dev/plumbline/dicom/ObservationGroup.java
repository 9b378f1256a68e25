// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static dev.plumbline.dicom.Concepts.CROSSING;
import static dev.plumbline.dicom.Concepts.ENTRY;
import static dev.plumbline.dicom.Concepts.MIDPOINT;
import static dev.plumbline.dicom.Concepts.PATH;
import static dev.plumbline.dicom.Concepts.SEEN_END;
import static dev.plumbline.dicom.Concepts.SKIN;
import static dev.plumbline.dicom.Concepts.TARGET;
import static dev.plumbline.dicom.Concepts.TIP;

import dev.plumbline.deviation.Deviation;
import dev.plumbline.deviation.DeviationQuantity;
import dev.plumbline.geometry.Calibration;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Reading;
import dev.plumbline.observation.Observation;
import dev.plumbline.observation.ObservationMarks;
import dev.plumbline.observation.ObservationQuantity;
import dev.plumbline.plan.Approach;
import dev.plumbline.record.CaseDocument;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * TID 1501 with finding F-OBS: the path measured on a saved frame and, in the same group, how it differs from the plan.
 */
final class ObservationGroup {
    /** A number that is always written and the marks that stand under it. */
    record Row(ObservationQuantity measurand, List<Code> marks) {
        static Row of(ObservationQuantity measurand, Code... marks) {
            return new Row(measurand, List.of(marks));
        }
    }

    /** A deviation and the concept under which it is judged against its uncertainty. */
    record DeviationRow(DeviationQuantity measurand, String judgedAs) {}

    static final List<Row> IN_PLANE = List.of(
            Row.of(ObservationQuantity.ANGLE_TO_SKIN, PATH, SKIN),
            Row.of(ObservationQuantity.DEEPEST_SEEN_DEPTH),
            Row.of(ObservationQuantity.SEEN_LENGTH),
            Row.of(ObservationQuantity.TIP_DEPTH, TIP, SEEN_END),
            Row.of(ObservationQuantity.ENTRY_DISTANCE, MIDPOINT, ENTRY),
            Row.of(ObservationQuantity.PATH),
            Row.of(ObservationQuantity.TIP_TO_TARGET, TARGET),
            Row.of(ObservationQuantity.BOW));
    static final List<Row> OUT_OF_PLANE = List.of(
            Row.of(ObservationQuantity.CROSSING_DEPTH, CROSSING),
            Row.of(ObservationQuantity.ANGLE_TO_SKIN, PATH, SKIN),
            Row.of(ObservationQuantity.TIP_DEPTH, TIP),
            Row.of(ObservationQuantity.PUNCTURE_DISTANCE),
            Row.of(ObservationQuantity.PATH),
            Row.of(ObservationQuantity.TIP_TO_TARGET, TARGET, MIDPOINT));
    static final List<DeviationRow> DEVIATIONS_IN_PLANE = List.of(
            new DeviationRow(DeviationQuantity.ANGLE_TO_SKIN, "E-ANGLE"),
            new DeviationRow(DeviationQuantity.TIP_DEPTH, "E-DEPTH"),
            new DeviationRow(DeviationQuantity.ENTRY_DISTANCE, "E-ENTRY"),
            new DeviationRow(DeviationQuantity.PATH, "E-PATH"),
            new DeviationRow(DeviationQuantity.ALONG_PLAN, "E-ALONG"),
            new DeviationRow(DeviationQuantity.ACROSS_PLAN, "E-ACROSS"));
    static final List<DeviationRow> DEVIATIONS_OUT_OF_PLANE = List.of(
            new DeviationRow(DeviationQuantity.CROSSING_DEPTH, "E-CROSS"),
            new DeviationRow(DeviationQuantity.PUNCTURE_DISTANCE, "E-PUNCT"),
            new DeviationRow(DeviationQuantity.ANGLE_TO_SKIN, "E-ANGLE"),
            new DeviationRow(DeviationQuantity.TIP_DEPTH, "E-DEPTH"));

    private final boolean inPlane;
    /** Neither the plan nor an earlier observation is drawn on the frame. */
    private final boolean firstOnFrame;

    private final ObservationMarks stated;
    private final Observation observation;
    private final Deviation deviation;
    private final RecordSource.Placed observed;
    private final Optional<Calibration> calibration;
    private final FrameMarks marks;
    private final MeasurementGroup group;

    private ObservationGroup(RecordSource source, int index) {
        CaseDocument document = source.revision().document();
        inPlane = document.approach() == Approach.IN_PLANE;
        stated = document.observations().get(index).marks();
        observation = source.revision().comparison().observations().get(index);
        deviation = source.revision().comparison().deviations().get(index);
        observed = source.observed(index);
        ItemValue.Instance frame = observed.instance();
        firstOnFrame = !frame.equals(source.planned().instance())
                && IntStream.range(0, index)
                        .noneMatch(i -> frame.equals(source.observed(i).instance()));
        calibration = Scales.of(observed.frame().geometry(), document.probe(), measuringMarks(stated));
        marks = observed.marks()
                .line(PATH, stated.shaft())
                .line(SKIN, stated.skin())
                .point(MIDPOINT, stated.midpoint())
                .point(TARGET, stated.target());
        String label = "Observation " + (index + 1);
        group = new MeasurementGroup(
                        label, source.trackingUid(observation.id()), Concepts.OBSERVATION, Codes.own("MM-MARKS"))
                .addAll(FindingSite.of(document.context()))
                .addAll(Algorithm.items(
                        "Plumbline observation",
                        source.installation().softwareVersion(),
                        Parameters.observation(document, index, calibration)))
                .add(ContentItem.uid(Relation.CONTAINS, Concepts.COMPARED_PLAN, source.trackingUid(PlanGroup.NAME)));
    }

    /** @param index of the observation, from 0 */
    static MeasurementGroup of(RecordSource source, int index) {
        return new ObservationGroup(source, index).compose();
    }

    private static List<PointPx> measuringMarks(ObservationMarks stated) {
        List<PointPx> marks = new ArrayList<>(stated.shaft());
        stated.tip().ifPresent(marks::add);
        stated.target().ifPresent(marks::add);
        return marks;
    }

    private MeasurementGroup compose() {
        statements();
        boolean needleSeen = draw();
        computedMarks();
        for (Row row : inPlane ? IN_PLANE : OUT_OF_PLANE) {
            group.rich(Measurement.rich(
                    Quantity.of(row.measurand()),
                    observation.readings().of(row.measurand()),
                    marks.items(row.marks())));
        }
        for (DeviationRow row : deviationRows()) {
            Reading reading = deviation.readings().of(row.measurand());
            group.rich(Measurement.rich(Quantity.deviation(row.measurand()), reading, List.of()));
        }
        label(needleSeen);
        return group;
    }

    private List<DeviationRow> deviationRows() {
        return inPlane ? DEVIATIONS_IN_PLANE : DEVIATIONS_OUT_OF_PLANE;
    }

    private void statements() {
        observation.phase().ifPresent(phase -> group.says("OBS-PHASE", Codes.ofWord("phases", phase.word())));
        stated.tipIsTip().ifPresent(yes -> group.says("TIP-CONFIRMED", Concepts.yesOrNo(yes)));
        Caveats.add(group, observation.assumptions(), observation.doubts());
        observation
                .entry()
                .ifPresent(entry -> group.says(
                        "E-EXTRAP",
                        Concepts.yesOrNo(!observed.frame().geometry().holds(entry))));
        for (DeviationRow row : deviationRows()) {
            if (deviation.readings().of(row.measurand()) instanceof Reading.Seen seen) {
                group.says(row.judgedAs(), Codes.ofWord("evaluations", Boolean.toString(seen.exceedsUncertainty())));
            }
        }
    }

    /** Draws the needle, else the target; whether any of the needle was seen. */
    private boolean draw() {
        if (inPlane && stated.shaft().size() >= 2) {
            drawTip();
            drawShaft();
            return true;
        }
        GroupDrawing drawing = new GroupDrawing(marks, group, calibration, true);
        if (stated.tip().isPresent()) {
            drawEnd(stated.tip().get(), drawing);
            return true;
        }
        stated.target().ifPresent(target -> drawing.row(TARGET, target));
        if (!group.isDrawn()) { // nothing else would tell which frame this is about
            ItemValue image = new ItemValue.Image(observed.instance());
            group.add(new ContentItem(Relation.CONTAINS, Optional.empty(), image, List.of()));
        }
        return false;
    }

    /**
     * A confirmed tip stands before the shaft: a viewer draws the last of a group, but sets the label beside the first, and
     * beside a line it may lie off the screen, as a needle often comes in at the picture's edge. Not where another group has
     * its label there already: the plan at its target on the planned frame, an earlier observation at its tip.
     */
    private void drawTip() {
        Reading depth = observation.readings().of(ObservationQuantity.TIP_DEPTH);
        if (confirmed() && firstOnFrame && depth instanceof Reading.Seen) {
            Quantity quantity = Quantity.of(ObservationQuantity.TIP_DEPTH);
            stated.tip()
                    .ifPresent(
                            tip -> new GroupDrawing(marks, group, calibration, true).point(TIP, tip, quantity, depth));
        }
    }

    /** From the entry to the confirmed tip, or else as much of the shaft as was marked; the marks themselves stay. */
    private void drawShaft() {
        GroupDrawing drawing = new GroupDrawing(observed.marks(), group, calibration, true);
        Reading path = observation.readings().of(ObservationQuantity.PATH);
        Optional<DrawnPath> whole = path instanceof Reading.Seen
                ? observation.entry().flatMap(entry -> stated.tip().flatMap(tip -> drawn(entry, tip)))
                : Optional.empty();
        whole.ifPresentOrElse(
                drawn -> drawing.path(drawn, path),
                () -> drawing.shaft(skinEndFirst(), observation.readings().of(ObservationQuantity.SEEN_LENGTH)));
    }

    private Optional<DrawnPath> drawn(PointPx entry, PointPx tip) {
        return DrawnPath.of(entry, tip, observed.frame().geometry());
    }

    private List<PointPx> skinEndFirst() {
        List<PointPx> points = new ArrayList<>(stated.shaft());
        points.sort(observation
                .entry()
                .map(entry -> Comparator.comparingDouble(entry::distanceTo))
                .orElseGet(() -> Comparator.comparingDouble(PointPx::row)));
        return points;
    }

    private void drawEnd(PointPx tip, GroupDrawing drawing) {
        if (inPlane) {
            ObservationQuantity depth = ObservationQuantity.TIP_DEPTH;
            drawing.point(
                    confirmed() ? TIP : SEEN_END,
                    tip,
                    Quantity.of(depth),
                    observation.readings().of(depth));
        } else {
            ObservationQuantity depth = ObservationQuantity.CROSSING_DEPTH;
            drawing.point(
                    CROSSING, tip, Quantity.of(depth), observation.readings().of(depth));
        }
    }

    private void computedMarks() {
        observation
                .entry()
                .map(PointPx::onGrid)
                .filter(observed.frame().geometry()::holds)
                .ifPresent(entry -> marks.point(ENTRY, entry));
        if (confirmed()) {
            marks.point(TIP, stated.tip());
        } else if (inPlane) {
            marks.point(SEEN_END, stated.tip());
        }
    }

    private boolean confirmed() {
        return stated.tipIsTip().orElse(false);
    }

    private void label(boolean needleSeen) {
        if (!needleSeen) {
            group.comment("Needle not seen");
            return;
        }
        group.comment(Labels.angle("Observed", observation.readings().of(ObservationQuantity.ANGLE_TO_SKIN)));
        Labels.angleDeviation(deviation.readings().of(DeviationQuantity.ANGLE_TO_SKIN))
                .ifPresent(group::comment);
    }
}
