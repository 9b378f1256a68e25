// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Shape;
import dev.plumbline.geometry.SkinBeyondProbe;
import java.util.ArrayList;
import java.util.List;

/** Distances by walking along path and outline in small steps: another way to the same answers, and a slow one. */
final class BruteForce {
    private static final int PATH_STEPS = 600;
    private static final int EDGE_STEPS = 60;

    private final double targetU;
    private final double targetW;
    private final double overshoot;
    private final SkinBeyondProbe skin;

    BruteForce(double targetU, double targetW, double overshoot, SkinBeyondProbe skin) {
        this.targetU = targetU;
        this.targetW = targetW;
        this.overshoot = overshoot;
        this.skin = skin;
    }

    double skinAt(double u, double halfFace) {
        if (skin instanceof SkinBeyondProbe.Round round) {
            return round.radiusMm() - Math.sqrt(round.radiusMm() * round.radiusMm() - u * u);
        }
        if (skin instanceof SkinBeyondProbe.Drop drop && u > halfFace) {
            return drop.dropMm() * (u - halfFace) / (drop.atMm() - halfFace);
        }
        return 0;
    }

    double angle(double entry, double halfFace) {
        return Math.toDegrees(Math.atan2(targetW - skinAt(entry, halfFace), entry - targetU));
    }

    /** Least signed distance of path and extension from a shape given in millimetres; negative inside. */
    double clearance(List<double[]> corners, double radius, double entry, double halfFace) {
        double w = skinAt(entry, halfFace);
        double length = Math.hypot(targetU - entry, targetW - w);
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i <= PATH_STEPS; i++) {
            double along = (length + overshoot) * i / PATH_STEPS / length;
            least = Math.min(
                    least, signed(corners, radius, entry + along * (targetU - entry), w + along * (targetW - w)));
        }
        return least;
    }

    double targetClearance(List<double[]> corners, double radius) {
        return signed(corners, radius, targetU, targetW);
    }

    private static double signed(List<double[]> corners, double radius, double u, double w) {
        if (corners.size() == 1) {
            return Math.hypot(u - corners.get(0)[0], w - corners.get(0)[1]) - radius;
        }
        double nearest = Double.POSITIVE_INFINITY;
        double turns = 0;
        for (int i = 0; i < corners.size(); i++) {
            double[] a = corners.get(i);
            double[] b = corners.get((i + 1) % corners.size());
            for (int s = 0; s <= EDGE_STEPS; s++) {
                double t = (double) s / EDGE_STEPS;
                nearest = Math.min(nearest, Math.hypot(a[0] + t * (b[0] - a[0]) - u, a[1] + t * (b[1] - a[1]) - w));
            }
            double turn = Math.atan2(b[1] - w, b[0] - u) - Math.atan2(a[1] - w, a[0] - u);
            turns += Math.IEEEremainder(turn, 2 * Math.PI);
        }
        return Math.abs(turns) > Math.PI ? -nearest : nearest;
    }

    /** Corners in millimetres from the midpoint of a fixture with square pixels and level skin. */
    static List<double[]> corners(Shape shape, double mmPerPixel, PointPx midpoint) {
        List<PointPx> points =
                shape instanceof Shape.Disc disc ? List.of(disc.center()) : ((Shape.Outline) shape).points();
        List<double[]> corners = new ArrayList<>();
        for (PointPx point : points) {
            corners.add(new double[] {
                (point.column() - midpoint.column()) * mmPerPixel, (point.row() - midpoint.row()) * mmPerPixel
            });
        }
        return corners;
    }
}
