// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.intake;

import dev.plumbline.geometry.PointPx;
import dev.plumbline.intake.ForeignMark.Form;
import java.util.ArrayList;
import java.util.List;

/** Closed forms as outlines. Round ones become polygons that enclose them, so that no part of a structure is left out. */
final class Outlines {
    private static final int CORNERS = 32;
    /** A polygon of so many corners touches the circle with the middles of its edges. */
    private static final double ENCLOSING = 1 / Math.cos(Math.PI / CORNERS);

    private Outlines() {}

    /** Corners of the outline; the last joins the first. */
    static List<PointPx> corners(ForeignMark mark) {
        List<PointPx> points = mark.points();
        if (mark.form() == Form.CIRCLE) {
            double radius = points.get(0).distanceTo(points.get(1));
            return round(points.get(0), new double[] {radius, 0}, new double[] {0, radius});
        }
        if (mark.form() == Form.ELLIPSE) {
            PointPx middle = new PointPx(
                    (points.get(0).column() + points.get(1).column()) / 2,
                    (points.get(0).row() + points.get(1).row()) / 2);
            return round(middle, half(points.get(0), points.get(1)), half(points.get(2), points.get(3)));
        }
        return points;
    }

    private static double[] half(PointPx from, PointPx to) {
        return new double[] {(to.column() - from.column()) / 2, (to.row() - from.row()) / 2};
    }

    private static List<PointPx> round(PointPx middle, double[] one, double[] other) {
        List<PointPx> corners = new ArrayList<>(CORNERS);
        for (int i = 0; i < CORNERS; i++) {
            double cos = ENCLOSING * Math.cos(2 * Math.PI * i / CORNERS);
            double sin = ENCLOSING * Math.sin(2 * Math.PI * i / CORNERS);
            corners.add(new PointPx(
                    middle.column() + cos * one[0] + sin * other[0], middle.row() + cos * one[1] + sin * other[1]));
        }
        return corners;
    }
}
