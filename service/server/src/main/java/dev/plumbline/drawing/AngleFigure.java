// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import java.util.ArrayList;
import java.util.List;

/** The arc of an angle, round in millimetres. */
final class AngleFigure {
    private static final int PIECES = 24;
    private static final double PLAN_RADIUS_EM = 4.2;
    private static final double OBSERVED_RADIUS_EM = 5.8;
    private static final double LONGEST_SHARE = 0.6;

    private AngleFigure() {}

    static void draw(Item.Angle angle, Grid grid, Drawn drawn) {
        Xy corner = grid.xy(angle.corner());
        Xy end = grid.xy(angle.second());
        Xy first = grid.directionMm(corner, grid.xy(angle.first()));
        Xy second = grid.directionMm(corner, end);
        double from = Math.atan2(first.y(), first.x());
        double sweep = Math.IEEEremainder(Math.atan2(second.y(), second.x()) - from, 2 * Math.PI);
        double wanted = (angle.role() == Role.PLAN_ANGLE ? PLAN_RADIUS_EM : OBSERVED_RADIUS_EM) * grid.em();
        double radius = Math.min(wanted, LONGEST_SHARE * corner.distanceTo(end));
        double mm = radius / Math.max(grid.xPerMm(), grid.yPerMm());
        List<Xy> arc = new ArrayList<>();
        for (int i = 0; i <= PIECES; i++) {
            double at = from + sweep * i / PIECES;
            arc.add(grid.plusMm(corner, new Xy(Math.cos(at), Math.sin(at)), mm));
        }
        Pen pen = Look.pen(angle.role()).times(grid.em());
        drawn.elements().add(new Element.Trace(angle.role().kind(), arc, false, pen));
        drawn.obstacles().path(arc, false);
        drawn.arcMiddles().put(angle.role(), arc.get(PIECES / 2));
    }
}
