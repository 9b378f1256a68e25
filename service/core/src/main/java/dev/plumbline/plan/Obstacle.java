// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.Spot;
import java.util.List;

/**
 * A marked structure in the probe frame at the nominal values: a disc (one corner and a radius) or an outline (its edges
 * and its inside).
 *
 * <p>Source: elementary plane geometry.
 *
 * @param corners one for a disc, three and more for an outline
 * @param middle of a circle round all of it
 * @param reachMm radius of that circle
 */
record Obstacle(String name, List<Spot> corners, double radiusMm, Spot middle, double reachMm) {
    static Obstacle of(String name, List<Spot> corners, double radiusMm) {
        double u = corners.stream().mapToDouble(Spot::u).average().orElseThrow();
        double w = corners.stream().mapToDouble(Spot::w).average().orElseThrow();
        Spot middle = new Spot(u, w);
        double reach = corners.stream().mapToDouble(middle::distanceTo).max().orElseThrow() + radiusMm;
        return new Obstacle(name, List.copyOf(corners), radiusMm, middle, reach);
    }

    /** How corner or edge lie to the part of the path that comes nearest. */
    enum Place {
        CORNER_BESIDE_PATH,
        CORNER_AT_START,
        CORNER_AT_END,
        EDGE_AT_START,
        EDGE_AT_END,
        CROSSED
    }

    /**
     * What comes nearest to a straight piece of path.
     *
     * @param corner the nearest corner, or the first of the nearest edge; where the path crosses an outline, the corner that
     *     reaches farthest into the side to which the path would have to move least
     * @param clearanceMm negative where the path crosses: how far it would have to move sideways
     */
    record Nearest(Place place, int corner, double clearanceMm) {}

    boolean disc() {
        return corners.size() == 1;
    }

    Spot corner(int index) {
        return corners.get(index % corners.size());
    }

    /** Whether the point lies within, by more than rounding. */
    boolean holds(Spot point) {
        if (disc()) {
            return point.distanceTo(corner(0)) < radiusMm - Intervals.TOLERANCE_MM;
        }
        return inside(point) && nearest(point, point).clearanceMm() < -Intervals.TOLERANCE_MM;
    }

    /** Even-odd rule. */
    private boolean inside(Spot point) {
        boolean inside = false;
        for (int i = 0; i < corners.size(); i++) {
            Spot a = corner(i);
            Spot b = corner(i + 1);
            if (a.w() > point.w() != b.w() > point.w()
                    && point.u() < a.u() + (b.u() - a.u()) * (point.w() - a.w()) / (b.w() - a.w())) {
                inside = !inside;
            }
        }
        return inside;
    }

    double clearance(Spot from, Spot to) {
        return nearest(from, to).clearanceMm();
    }

    /** Whether a straight piece of path keeps a distance; the edges are looked at only where the corners do not tell. */
    boolean leaves(double distance, Spot from, Spot to) {
        if (distanceFromSegment(middle, from, to) - reachMm >= distance) {
            return true;
        }
        for (Spot corner : corners) {
            if (distanceFromSegment(corner, from, to) - radiusMm < distance) {
                return false;
            }
        }
        return disc() || clearance(from, to) >= distance;
    }

    private static double distanceFromSegment(Spot point, Spot from, Spot to) {
        Spot way = to.minus(from);
        double square = way.dot(way);
        double share = square == 0 ? 0 : point.minus(from).dot(way) / square;
        return point.distanceTo(from.plus(way, Math.min(1, Math.max(0, share))));
    }

    Nearest nearest(Spot from, Spot to) {
        if (!disc()) {
            OutlineCrossing crossing = OutlineCrossing.of(this, from, to);
            if (crossing.any()) {
                return crossing.depth();
            }
            if (inside(from)) {
                Nearest edge = nearestOutside(from, to);
                return new Nearest(edge.place(), edge.corner(), -edge.clearanceMm());
            }
        }
        return nearestOutside(from, to);
    }

    private Nearest nearestOutside(Spot from, Spot to) {
        Nearest best = new Nearest(Place.CORNER_AT_START, 0, Double.POSITIVE_INFINITY);
        for (int i = 0; i < corners.size(); i++) {
            best = nearer(best, cornerToPath(i, from, to));
            if (!disc()) {
                best = nearer(best, edgeToEnd(i, from, Place.EDGE_AT_START));
                best = nearer(best, edgeToEnd(i, to, Place.EDGE_AT_END));
            }
        }
        return best;
    }

    private static Nearest nearer(Nearest a, Nearest b) {
        return b.clearanceMm() < a.clearanceMm() ? b : a;
    }

    private Nearest cornerToPath(int index, Spot from, Spot to) {
        Spot way = to.minus(from);
        Spot toCorner = corner(index).minus(from);
        double square = way.dot(way);
        double share = square == 0 ? 0 : toCorner.dot(way) / square;
        if (share <= 0) {
            return new Nearest(Place.CORNER_AT_START, index, toCorner.length() - radiusMm);
        }
        if (share >= 1) {
            return new Nearest(Place.CORNER_AT_END, index, corner(index).distanceTo(to) - radiusMm);
        }
        double offset = Math.abs(way.cross(toCorner)) / Math.sqrt(square);
        return new Nearest(Place.CORNER_BESIDE_PATH, index, offset - radiusMm);
    }

    /** Infinite where the foot lies beyond the edge: then a corner is nearer. */
    private Nearest edgeToEnd(int index, Spot end, Place place) {
        Spot edge = corner(index + 1).minus(corner(index));
        Spot toEnd = end.minus(corner(index));
        double square = edge.dot(edge);
        double share = square == 0 ? -1 : toEnd.dot(edge) / square;
        double distance =
                0 < share && share < 1 ? Math.abs(edge.cross(toEnd)) / Math.sqrt(square) : Double.POSITIVE_INFINITY;
        return new Nearest(place, index, distance);
    }
}
