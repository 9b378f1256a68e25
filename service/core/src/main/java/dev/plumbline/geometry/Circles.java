// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import java.util.List;

/** Crossings and tangents of circles; elementary. A touching line or circle counts as crossing, within rounding. */
public final class Circles {
    /** What a distance may be off by through rounding, relative to the lengths involved. */
    private static final double ROUNDING = 1e-12;

    private Circles() {}

    /** Where the line {@code from + t * direction} crosses the circle, as t. */
    public static double[] lineCrossings(Spot from, Spot direction, Spot center, double radius) {
        Spot fromCenter = from.minus(center);
        double a = direction.dot(direction);
        if (a == 0) {
            return new double[0];
        }
        double b = fromCenter.dot(direction);
        // The distance of the line from the center, which does not cancel like the usual discriminant.
        double away = direction.cross(fromCenter) / Math.sqrt(a);
        double square = (radius - away) * (radius + away);
        if (square < -ROUNDING * (radius * radius + away * away)) {
            return new double[0];
        }
        double half = Math.sqrt(Math.max(0, square) / a);
        return new double[] {-b / a - half, -b / a + half};
    }

    public static List<Spot> crossings(Spot first, double firstRadius, Spot second, double secondRadius) {
        Spot way = second.minus(first);
        double distance = way.length();
        if (distance == 0) {
            return List.of();
        }
        double along =
                (distance * distance + (firstRadius - secondRadius) * (firstRadius + secondRadius)) / 2 / distance;
        double square = (firstRadius - along) * (firstRadius + along);
        if (square < -ROUNDING * (firstRadius * firstRadius + along * along)) {
            return List.of();
        }
        double half = Math.sqrt(Math.max(0, square));
        Spot unit = new Spot(way.u() / distance, way.w() / distance);
        Spot foot = first.plus(unit, along);
        Spot normal = new Spot(-unit.w(), unit.u());
        return List.of(foot.plus(normal, half), foot.plus(normal, -half));
    }

    /** Directions of the two tangents from a point outside or on the circle; towards the center where the radius is zero. */
    public static List<Spot> tangents(Spot from, Spot center, double radius) {
        Spot way = center.minus(from);
        double distance = way.length();
        if (distance == 0 || distance < radius * (1 - 1e-9)) {
            return List.of();
        }
        double sin = Math.min(1, radius / distance);
        double cos = Math.sqrt(Math.max(0, (1 - sin) * (1 + sin)));
        return List.of(
                new Spot(way.u() * cos - way.w() * sin, way.u() * sin + way.w() * cos),
                new Spot(way.u() * cos + way.w() * sin, -way.u() * sin + way.w() * cos));
    }
}
