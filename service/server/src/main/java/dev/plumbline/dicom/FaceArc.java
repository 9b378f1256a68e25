// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.geometry.PixelSize;
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
    private static final double TOLERANCE_PX = 3;
    private static final double OUTSIDE_WEIGHT = 3;

    static FaceArc fit(InsonatedArea area, PixelSize pixel, EdgeLine.Point center) {
        double[] distances = distances(area, pixel, center);
        double tolerance = TOLERANCE_PX * pixel.mmPerRow();
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

    /** Of the rim's points that are not on one of the sides; those hang below the middle third's lowest by angle. */
    private static double[] distances(InsonatedArea area, PixelSize pixel, EdgeLine.Point center) {
        int[] top = area.top();
        List<Double> distances = new ArrayList<>();
        int first = top.length / 3;
        for (int i = first; i < top.length - first; i++) {
            if (top[i] != InsonatedArea.NONE) {
                double across = (i + 0.5 + area.bounds().minColumn()) * pixel.mmPerColumn() - center.across();
                double down = top[i] * pixel.mmPerRow() - center.down();
                distances.add(Math.hypot(across, down));
            }
        }
        return distances.stream().mapToDouble(Double::doubleValue).toArray();
    }
}
