// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.geometry.Calibration;
import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.geometry.PixelSize;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Reading;
import dev.plumbline.geometry.Reason;
import dev.plumbline.geometry.Shape;
import dev.plumbline.plan.Clearance;
import dev.plumbline.plan.Hazard;
import dev.plumbline.plan.InPlanePlan;
import dev.plumbline.plan.Nerve;
import dev.plumbline.plan.PlanMarks;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** TID 1501 with finding F-HAZARD or F-NERVE: an outline or disc that the plan was checked against. */
final class StructureGroups {
    private static final int CIRCLE_POINTS = 48;

    private final RecordSource source;
    private final RecordSource.Placed planned;
    private final Optional<Calibration> calibration;

    private StructureGroups(RecordSource source) {
        this.source = source;
        planned = source.planned();
        PointPx target = source.revision().document().marks().target();
        calibration = Scales.of(
                planned.frame().geometry(), source.revision().document().probe(), List.of(target));
    }

    /** Hazards first, each in the order it was marked. */
    static List<ContentItem> of(RecordSource source) {
        StructureGroups groups = new StructureGroups(source);
        PlanMarks marks = source.revision().document().marks();
        List<ContentItem> items = new ArrayList<>();
        for (int i = 0; i < marks.hazards().size(); i++) {
            items.add(groups.hazard(marks.hazards().get(i), i));
        }
        for (int i = 0; i < marks.nerves().size(); i++) {
            items.add(groups.nerve(marks.nerves().get(i), i));
        }
        return items;
    }

    private ContentItem hazard(Hazard hazard, int index) {
        String name = hazard.name();
        MeasurementGroup group = head("Hazard " + (index + 1), "hazard/" + name, Concepts.HAZARD)
                .says("HAZARD-KIND", Codes.ofWord("hazard kinds", hazard.kind().word()))
                .add(structureName(name));
        draw(group, hazard.shape(), Codes.own("M-HAZARD"));
        group.rich(Measurement.rich(Quantity.of("Q-CLEARANCE"), clearance(index).path(), List.of()));
        return group.comment(shortened(name)).item();
    }

    private ContentItem nerve(Nerve nerve, int index) {
        String name = nerve.name();
        MeasurementGroup group =
                head("Nerve " + (index + 1), "nerve/" + name, Concepts.NERVE).add(structureName(name));
        draw(group, nerve.shape(), Codes.own("M-NERVE"));
        Clearance clearance = nerveClearance(index);
        group.rich(Measurement.rich(Quantity.of("Q-NERVECLR"), clearance.path(), List.of()));
        group.rich(Measurement.rich(Quantity.of("Q-NERVECLROV"), clearance.overshoot(), List.of()));
        return group.comment(shortened(name)).item();
    }

    private MeasurementGroup head(String label, String trackedAs, Code finding) {
        return new MeasurementGroup(label, source.trackingUid(trackedAs), finding, Codes.own("MM-MARKS"))
                .addAll(FindingSite.of(source.revision().document().context()))
                .addAll(Algorithm.items(
                        "Plumbline structure", source.installation().softwareVersion(), Parameters.none()));
    }

    private static ContentItem structureName(String name) {
        return ContentItem.text(Relation.CONTAINS, Codes.own("STRUCTURE-NAME"), name);
    }

    private Clearance clearance(int index) {
        return source.revision().comparison().plan() instanceof InPlanePlan plan
                ? plan.clearances().hazards().get(index)
                : notInThisPlane();
    }

    private Clearance nerveClearance(int index) {
        return source.revision().comparison().plan() instanceof InPlanePlan plan
                ? plan.clearances().nerves().get(index)
                : notInThisPlane();
    }

    private static Clearance notInThisPlane() {
        Reading none = Reading.notSeen(Reason.NOT_IN_THIS_PLANE);
        return new Clearance("", none, none, false);
    }

    /** The outline as a closed line with its greatest diameter; a disc as 48 points, cut to the image. */
    private void draw(MeasurementGroup group, Shape shape, Code outline) {
        PixelSize pixel = calibration.orElseThrow().pixel();
        FrameMarks marks = planned.marks();
        double diameterMm;
        if (shape instanceof Shape.Disc disc) {
            marks.line(outline, circle(disc, pixel, planned.frame().geometry()));
            marks.point(Concepts.CENTRE, disc.center());
            diameterMm = 2 * disc.radiusMm();
        } else {
            List<PointPx> points = ((Shape.Outline) shape).points();
            marks.line(outline, closed(points));
            diameterMm = diameterMm(points, pixel);
        }
        Quantity diameter = Quantity.of("Q-DIAMETER");
        group.thin(Measurement.thin(
                diameter.concept(), DecimalText.measured(diameterMm, diameter.unit()), marks.item(outline)));
        Code under = marks.has(Concepts.CENTRE) ? Concepts.CENTRE : outline;
        group.rich(Measurement.drawn(diameter, diameterMm, marks.items(List.of(under))));
    }

    private static List<PointPx> circle(Shape.Disc disc, PixelSize pixel, FrameGeometry frame) {
        List<PointPx> points = new ArrayList<>();
        for (int i = 0; i < CIRCLE_POINTS; i++) {
            double angle = 2 * Math.PI * i / CIRCLE_POINTS;
            double column = disc.center().column() + disc.radiusMm() / pixel.mmPerColumn() * Math.cos(angle);
            double row = disc.center().row() + disc.radiusMm() / pixel.mmPerRow() * Math.sin(angle);
            points.add(new PointPx(clamp(column, frame.columns()), clamp(row, frame.rows())).onGrid());
        }
        return closed(points);
    }

    private static double clamp(double value, int most) {
        return Math.max(0, Math.min(most, value));
    }

    /** With the first point again at the end, whether or not it stood there: a reader takes exactly one off. */
    private static List<PointPx> closed(List<PointPx> points) {
        List<PointPx> closed = new ArrayList<>(points);
        closed.add(points.get(0));
        return closed;
    }

    private static double diameterMm(List<PointPx> points, PixelSize pixel) {
        return IntStream.range(0, points.size())
                .mapToDouble(i -> IntStream.range(0, i)
                        .mapToDouble(j -> new DrawnPath(points.get(i), points.get(j), true).lengthMm(pixel))
                        .max()
                        .orElse(0))
                .max()
                .orElse(0);
    }

    private static String shortened(String name) {
        String label = Character.toUpperCase(name.charAt(0)) + name.substring(1);
        return label.length() <= 16 ? label : label.substring(0, 15) + "…";
    }
}
