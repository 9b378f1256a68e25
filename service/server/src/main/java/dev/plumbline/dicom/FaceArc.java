// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.util.ArrayList;
import java.util.List;

/**
 * The arc of a curved face: how far the upper rim of the insonated area is from the point where its sides meet.
 *
 * <p>The radius is the one that most rim points agree with; dark speckle only ever moves a point away from the face.
 *
 * @param radiusMm from the point where the sides meet
 * @param support share of the rim's points that lie on the arc
 */
record FaceArc(double radiusMm, double support) {
    /**
     * The two sides of a sector.
     *
     * @param across where they meet, in millimetres from the frame's left
     * @param down where they meet, in millimetres from the frame's top
     * @param middle angle of the sector's middle line to the vertical in radians, positive to the right
     * @param half half the angle between the sides in radians
     */
    record Sides(double across, double down, double middle, double half) {
        /** Whether the point is seen from where they meet between the sides, not on one of them. */
        boolean holdBetween(EdgeLine.Point point) {
            double angle = Math.atan2(point.across() - across, point.down() - down);
            return Math.abs(angle - middle) <= WITHIN_SIDES * half;
        }
    }

    private static final double TOLERANCE_PX = 3;
    private static final double WITHIN_SIDES = 0.9;
    private static final double OUTSIDE_WEIGHT = 3;

    /**
     * Fits the arc.
     *
     * @param rim upper rim of the insonated area, in millimetres
     * @param sides where and how the sides meet
     */
    static FaceArc fit(List<EdgeLine.Point> rim, Sides sides, double millimetresPerRow) {
        double[] distances = rim.stream()
                .filter(sides::holdBetween)
                .mapToDouble(point -> Math.hypot(point.across() - sides.across, point.down() - sides.down))
                .toArray();
        double tolerance = TOLERANCE_PX * millimetresPerRow;
        double best = 0;
        double bestScore = Double.NEGATIVE_INFINITY;
        for (double candidate : distances) {
            double score = 0;
            for (double distance : distances) {
                double beyond = distance - candidate;
                score += Math.abs(beyond) <= tolerance ? 1 : beyond < 0 ? -OUTSIDE_WEIGHT : 0;
            }
            if (score > bestScore) {
                bestScore = score;
                best = candidate;
            }
        }
        return averaged(distances, best, tolerance);
    }

    private static FaceArc averaged(double[] distances, double radius, double tolerance) {
        List<Double> near = new ArrayList<>();
        for (double distance : distances) {
            if (Math.abs(distance - radius) <= tolerance) {
                near.add(distance);
            }
        }
        double mean = near.stream().mapToDouble(Double::doubleValue).average().orElse(radius);
        return new FaceArc(mean, near.size() / (double) Math.max(1, distances.length));
    }
}
