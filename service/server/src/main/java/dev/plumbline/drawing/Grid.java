// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import dev.plumbline.geometry.PixelSize;
import dev.plumbline.geometry.PointPx;

/**
 * From pixels of the frame to the sheet. Over a frame both are the same; alone, rows are stretched so that a millimetre is
 * as long down as it is across.
 *
 * @param xPerMm sheet units per millimetre across
 * @param yPerMm sheet units per millimetre down
 * @param em size of ordinary text; every width and gap follows it, so that drawings look alike at any frame size
 */
record Grid(double yPerRow, double xPerMm, double yPerMm, double em) {
    /** This many ordinary lines of text fit the side of a square frame; design choice. */
    private static final double EMS_PER_SIDE = 46;

    static Grid of(Scene scene, boolean overFrame) {
        PixelSize pixel = scene.pixel();
        double yPerRow = overFrame ? 1 : pixel.mmPerRow() / pixel.mmPerColumn();
        double em = Math.sqrt(scene.columns() * (scene.rows() * yPerRow)) / EMS_PER_SIDE;
        return new Grid(yPerRow, 1 / pixel.mmPerColumn(), yPerRow / pixel.mmPerRow(), em);
    }

    Xy xy(PointPx point) {
        return new Xy(point.column(), point.row() * yPerRow);
    }

    /** The direction from one sheet point to another as a unit vector in millimetres. */
    Xy directionMm(Xy from, Xy to) {
        double dx = (to.x() - from.x()) / xPerMm;
        double dy = (to.y() - from.y()) / yPerMm;
        double length = Math.hypot(dx, dy);
        return length == 0 ? new Xy(0, -1) : new Xy(dx / length, dy / length);
    }

    Xy plusMm(Xy from, Xy direction, double mm) {
        return from.plus(direction.x() * mm * xPerMm, direction.y() * mm * yPerMm);
    }
}
