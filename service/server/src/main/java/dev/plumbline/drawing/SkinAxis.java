// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import dev.plumbline.geometry.PixelSize;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.SkinBeyondProbe;
import java.util.List;

/**
 * The skin line under the probe on a frame: {@code u} millimetres along it towards the needle's side, {@code w}
 * millimetres into the patient.
 *
 * @param origin the probe's midpoint on the skin line, or where nothing says where that is, the foot of the target
 * @param along unit vector of u in millimetres on the image's axes
 * @param into unit vector of w
 * @param halfFaceMm from the origin to the end of the transducer's face; 0 where that is not known
 */
record SkinAxis(PixelSize pixel, PointPx origin, Xy along, Xy into, double halfFaceMm, SkinBeyondProbe beyond) {

    /**
     * The line through the marks (three and more: least squares of the distances), with its origin at the foot of a point.
     *
     * @param above the point whose foot is the origin
     */
    static SkinAxis through(List<PointPx> skin, PointPx above, PixelSize pixel, Sense sense, Face face) {
        double cx = skin.stream().mapToDouble(PointPx::column).average().orElseThrow() * pixel.mmPerColumn();
        double cy = skin.stream().mapToDouble(PointPx::row).average().orElseThrow() * pixel.mmPerRow();
        double xx = 0;
        double xy = 0;
        double yy = 0;
        for (PointPx point : skin) {
            double dx = point.column() * pixel.mmPerColumn() - cx;
            double dy = point.row() * pixel.mmPerRow() - cy;
            xx += dx * dx;
            xy += dx * dy;
            yy += dy * dy;
        }
        double direction = Math.atan2(2 * xy, xx - yy) / 2;
        double sign = (Math.cos(direction) >= 0) == sense.towardsRight() ? 1 : -1;
        Xy along = new Xy(sign * Math.cos(direction), sign * Math.sin(direction));
        double down = (along.x() >= 0) == sense.probeDown() ? -1 : 1;
        Xy into = new Xy(-down * along.y(), down * along.x());
        double u = (above.column() * pixel.mmPerColumn() - cx) * along.x()
                + (above.row() * pixel.mmPerRow() - cy) * along.y();
        PointPx origin =
                new PointPx((cx + u * along.x()) / pixel.mmPerColumn(), (cy + u * along.y()) / pixel.mmPerRow());
        return new SkinAxis(pixel, origin, along, into, face.halfMm(), face.beyond());
    }

    /**
     * Which way the image is shown.
     *
     * @param towardsRight the needle comes from the side of rising columns
     * @param probeDown the frame shows the probe at its lower edge
     */
    record Sense(boolean towardsRight, boolean probeDown) {}

    /** The transducer's face and the skin beside it. */
    record Face(double halfMm, SkinBeyondProbe beyond) {}

    PointPx at(double u, double w) {
        return new PointPx(
                origin.column() + (u * along.x() + w * into.x()) / pixel.mmPerColumn(),
                origin.row() + (u * along.y() + w * into.y()) / pixel.mmPerRow());
    }

    double u(PointPx point) {
        return dx(point) * along.x() + dy(point) * along.y();
    }

    double w(PointPx point) {
        return dx(point) * into.x() + dy(point) * into.y();
    }

    /** Where u meets the skin as it is taken to run; beyond a round limb's radius at its side. */
    PointPx skin(double u) {
        return at(u, depthOfSkin(u));
    }

    private double depthOfSkin(double u) {
        if (beyond instanceof SkinBeyondProbe.Round round && u > 0) {
            double r = round.radiusMm();
            return r - Math.sqrt(Math.max(0, r * r - u * u));
        }
        if (beyond instanceof SkinBeyondProbe.Drop drop && u > halfFaceMm) {
            return drop.dropMm() * (u - halfFaceMm) / (drop.atMm() - halfFaceMm);
        }
        return 0;
    }

    private double dx(PointPx point) {
        return (point.column() - origin.column()) * pixel.mmPerColumn();
    }

    private double dy(PointPx point) {
        return (point.row() - origin.row()) * pixel.mmPerRow();
    }
}
