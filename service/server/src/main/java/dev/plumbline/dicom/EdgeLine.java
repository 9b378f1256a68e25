// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.util.List;
import java.util.Optional;

/**
 * A straight edge through scattered points, {@code across = at + slope * down}, all in millimetres.
 *
 * <p>The line that most points lie on and that few points lie outside of: dark speckle only ever moves a point inwards.
 * <b>Source:</b> sampling consensus over all pairs of a fixed selection of points, then least squares (common practice);
 * the weight of outside points is a design choice.
 *
 * @param support share of the points that lie on it
 */
record EdgeLine(double at, double slope, double support) {
    private static final int SELECTION = 48;
    private static final double OUTSIDE_WEIGHT = 3;

    /** A point on the edge; down is what the edge is a function of. */
    record Point(double across, double down) {}

    /**
     * Fits the edge.
     *
     * @param outwards 1 where greater values of {@code across} lie outside, -1 where smaller ones do
     * @param toleranceMm how near a point lies that is on the edge
     */
    static Optional<EdgeLine> fit(List<Point> points, int outwards, double toleranceMm) {
        if (points.size() < 2) {
            return Optional.empty();
        }
        int step = Math.max(1, points.size() / SELECTION);
        EdgeLine best = new EdgeLine(0, 0, Double.NEGATIVE_INFINITY);
        for (int i = 0; i < points.size(); i += step) {
            for (int j = i + step; j < points.size(); j += step) {
                EdgeLine line = through(points.get(i), points.get(j));
                double score = score(line, points, outwards, toleranceMm);
                if (score > best.support) {
                    best = new EdgeLine(line.at, line.slope, score);
                }
            }
        }
        return Double.isFinite(best.support) ? Optional.of(refined(best, points, toleranceMm)) : Optional.empty();
    }

    private static EdgeLine through(Point one, Point other) {
        double slope = (other.across - one.across) / (other.down - one.down);
        return new EdgeLine(one.across - slope * one.down, slope, 0);
    }

    private static double score(EdgeLine line, List<Point> points, int outwards, double toleranceMm) {
        double score = 0;
        for (Point point : points) {
            double outside = (point.across - line.across(point.down)) * outwards;
            if (Math.abs(outside) <= toleranceMm) {
                score++;
            } else if (outside > 0) {
                score -= OUTSIDE_WEIGHT;
            }
        }
        return Double.isFinite(line.slope) ? score / points.size() : Double.NEGATIVE_INFINITY;
    }

    private static EdgeLine refined(EdgeLine line, List<Point> points, double toleranceMm) {
        List<Point> near = points.stream()
                .filter(point -> Math.abs(point.across - line.across(point.down)) <= toleranceMm)
                .toList();
        double meanDown = near.stream().mapToDouble(Point::down).average().orElse(0);
        double meanAcross = near.stream().mapToDouble(Point::across).average().orElse(0);
        double spread = 0;
        double together = 0;
        for (Point point : near) {
            spread += (point.down - meanDown) * (point.down - meanDown);
            together += (point.down - meanDown) * (point.across - meanAcross);
        }
        double slope = spread > 0 ? together / spread : line.slope;
        return new EdgeLine(meanAcross - slope * meanDown, slope, near.size() / (double) points.size());
    }

    double across(double down) {
        return at + slope * down;
    }

    /** Angle to the vertical in degrees, positive where the edge runs to the right as it goes down. */
    double leanDeg() {
        return Math.toDegrees(Math.atan(slope));
    }
}
