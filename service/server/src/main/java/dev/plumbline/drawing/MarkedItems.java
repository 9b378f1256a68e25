// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import dev.plumbline.geometry.PixelSize;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Shape;
import dev.plumbline.plan.Hazard;
import dev.plumbline.plan.Nerve;
import dev.plumbline.plan.PlanMarks;
import java.awt.BasicStroke;
import java.awt.geom.Area;
import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** Hazards with their margins, and nerves, as they were marked. */
final class MarkedItems {
    /** A margin's outline is drawn within this distance of its true place, mm. */
    private static final double FLATNESS_MM = 0.02;

    private MarkedItems() {}

    static List<Item> of(PlanMarks marks, PixelSize pixel) {
        List<Item> items = new ArrayList<>();
        for (Hazard hazard : marks.hazards()) {
            double margin = hazard.marginMm().orElse(0);
            if (margin > 0) {
                items.addAll(around(hazard.shape(), margin, pixel));
            }
        }
        for (Hazard hazard : marks.hazards()) {
            items.addAll(outline(Role.HAZARD, hazard.shape(), hazardName(hazard), pixel));
        }
        for (Nerve nerve : marks.nerves()) {
            items.addAll(outline(Role.NERVE, nerve.shape(), nerveName(nerve), pixel));
        }
        return items;
    }

    private static String hazardName(Hazard hazard) {
        String name = Wording.name(hazard.name());
        String kind = hazard.kind().word();
        return name.toLowerCase(Locale.ROOT).contains(kind) ? name : name + " (" + kind + ")";
    }

    private static String nerveName(Nerve nerve) {
        String name = Wording.name(nerve.name());
        return name.toLowerCase(Locale.ROOT).contains("nerve") ? name : name + " (nerve)";
    }

    private static List<Item> outline(Role role, Shape shape, String name, PixelSize pixel) {
        List<Item> items = new ArrayList<>();
        if (shape instanceof Shape.Disc disc) {
            items.add(new Item.Disc(role, disc.center(), disc.radiusMm()));
        } else if (shape instanceof Shape.Outline outline) {
            items.add(new Item.Run(role, outline.points(), true));
        }
        items.add(new Item.Label(role, List.of(name), anchors(shape, pixel), true));
        return items;
    }

    /** The middle, then the outermost points up, down, left and right. */
    private static List<PointPx> anchors(Shape shape, PixelSize pixel) {
        if (shape instanceof Shape.Disc disc) {
            PointPx middle = disc.center();
            double columns = disc.radiusMm() / pixel.mmPerColumn();
            double rows = disc.radiusMm() / pixel.mmPerRow();
            return List.of(
                    middle,
                    new PointPx(middle.column(), middle.row() - rows),
                    new PointPx(middle.column(), middle.row() + rows),
                    new PointPx(middle.column() - columns, middle.row()),
                    new PointPx(middle.column() + columns, middle.row()));
        }
        List<PointPx> points = ((Shape.Outline) shape).points();
        Comparator<PointPx> across = Comparator.comparingDouble(PointPx::column);
        Comparator<PointPx> down = Comparator.comparingDouble(PointPx::row);
        return List.of(
                new PointPx(
                        points.stream().mapToDouble(PointPx::column).average().orElseThrow(),
                        points.stream().mapToDouble(PointPx::row).average().orElseThrow()),
                Collections.min(points, down),
                Collections.max(points, down),
                Collections.min(points, across),
                Collections.max(points, across));
    }

    private static List<Item> around(Shape shape, double marginMm, PixelSize pixel) {
        if (shape instanceof Shape.Disc disc) {
            return List.of(new Item.Disc(Role.HAZARD_MARGIN, disc.center(), disc.radiusMm() + marginMm));
        }
        Path2D outline = new Path2D.Double();
        for (PointPx point : ((Shape.Outline) shape).points()) {
            double x = point.column() * pixel.mmPerColumn();
            double y = point.row() * pixel.mmPerRow();
            if (outline.getCurrentPoint() == null) {
                outline.moveTo(x, y);
            } else {
                outline.lineTo(x, y);
            }
        }
        outline.closePath();
        Area grown = new Area(outline);
        grown.add(new Area(new BasicStroke((float) (2 * marginMm), BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND)
                .createStrokedShape(outline)));
        return rings(grown, pixel);
    }

    private static List<Item> rings(Area area, PixelSize pixel) {
        List<Item> rings = new ArrayList<>();
        List<PointPx> ring = new ArrayList<>();
        double[] at = new double[6];
        for (PathIterator path = area.getPathIterator(null, FLATNESS_MM); !path.isDone(); path.next()) {
            if (path.currentSegment(at) == PathIterator.SEG_CLOSE) {
                rings.add(new Item.Run(Role.HAZARD_MARGIN, ring, true));
                ring = new ArrayList<>();
            } else {
                ring.add(new PointPx(at[0] / pixel.mmPerColumn(), at[1] / pixel.mmPerRow()));
            }
        }
        return rings;
    }
}
