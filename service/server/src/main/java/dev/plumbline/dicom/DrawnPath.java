// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.geometry.PixelSize;
import dev.plumbline.geometry.PointPx;
import java.util.List;
import java.util.Optional;

/**
 * A straight path as far as it lies on the image, on the grid of 1/64 px.
 *
 * @param whole nothing was cut off
 */
record DrawnPath(PointPx from, PointPx to, boolean whole) {
    /**
     * The part of a path that the image shows. Source: elementary (Liang and Barsky's parametric clipping).
     *
     * @return empty where less than a grid step of it lies on the image
     */
    static Optional<DrawnPath> of(PointPx from, PointPx to, FrameGeometry frame) {
        double enter = 0;
        double leave = 1;
        double[][] borders = {
            {from.column() - to.column(), from.column()},
            {to.column() - from.column(), frame.columns() - from.column()},
            {from.row() - to.row(), from.row()},
            {to.row() - from.row(), frame.rows() - from.row()}
        };
        for (double[] border : borders) {
            double outward = border[0];
            double room = border[1];
            if (outward == 0 && room < 0) {
                return Optional.empty();
            }
            if (outward < 0) {
                enter = Math.max(enter, room / outward);
            } else if (outward > 0) {
                leave = Math.min(leave, room / outward);
            }
        }
        if (enter >= leave) {
            return Optional.empty();
        }
        DrawnPath path = new DrawnPath(
                along(from, to, enter).onGrid(), along(from, to, leave).onGrid(), enter == 0 && leave == 1);
        return path.from.equals(path.to) ? Optional.empty() : Optional.of(path);
    }

    private static PointPx along(PointPx from, PointPx to, double share) {
        return new PointPx(
                from.column() + share * (to.column() - from.column()), from.row() + share * (to.row() - from.row()));
    }

    List<PointPx> points() {
        return List.of(from, to);
    }

    double lengthMm(PixelSize pixel) {
        return Math.hypot(
                (to.column() - from.column()) * pixel.mmPerColumn(), (to.row() - from.row()) * pixel.mmPerRow());
    }
}
