// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.PointMm;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.ProbeFrame;
import dev.plumbline.geometry.Spot;
import java.util.List;
import org.apache.commons.math3.RealFieldElement;

/**
 * A marked structure in the probe frame: where it comes nearest is found at the nominal values, how near it comes is a
 * formula over the inputs.
 */
record MeasuredObstacle<T extends RealFieldElement<T>>(MarkedShape<T> shape, ProbeFrame<T> axes, Obstacle nominal) {
    static <T extends RealFieldElement<T>> MeasuredObstacle<T> of(MarkedShape<T> shape, ProbeFrame<T> axes) {
        Spot origin = spot(axes.origin());
        Spot along = spot(axes.along());
        Spot into = spot(axes.into());
        double perColumn = axes.scale().mmPerColumn().getReal();
        double perRow = axes.scale().mmPerRow().getReal();
        List<Spot> corners = shape.points().stream()
                .map(point -> display(point, perColumn, perRow).minus(origin))
                .map(point -> new Spot(point.dot(along), point.dot(into)))
                .toList();
        return new MeasuredObstacle<>(shape, axes, new Obstacle(shape.name(), corners, shape.radiusMm()));
    }

    private static Spot display(PointPx point, double perColumn, double perRow) {
        return new Spot(point.column() * perColumn, point.row() * perRow);
    }

    static <T extends RealFieldElement<T>> Spot spot(PointMm<T> point) {
        return new Spot(point.x().getReal(), point.y().getReal());
    }

    /** Distance of a straight piece of path, mm; negative where it crosses (see {@link Obstacle.Nearest}). */
    T clearance(PointMm<T> from, PointMm<T> to) {
        Obstacle.Nearest nearest = nominal.nearest(spot(from), spot(to));
        boolean within = nearest.clearanceMm() < 0 && !nominal.disc();
        T distance = distance(nearest, from, to);
        return (within ? distance.negate() : distance).subtract(nominal.radiusMm());
    }

    private T distance(Obstacle.Nearest nearest, PointMm<T> from, PointMm<T> to) {
        PointMm<T> corner = corner(nearest.corner());
        return switch (nearest.place()) {
            case CORNER_BESIDE_PATH, CROSSED -> offset(corner, from, to);
            case CORNER_AT_START -> length(corner.minus(from));
            case CORNER_AT_END -> length(corner.minus(to));
            case EDGE_AT_START -> offset(from, corner, corner(nearest.corner() + 1));
            case EDGE_AT_END -> offset(to, corner, corner(nearest.corner() + 1));
        };
    }

    private PointMm<T> corner(int index) {
        return axes.of(shape.mark(index % shape.points().size()));
    }

    /** Perpendicular distance of a point from the line through two others. */
    private static <T extends RealFieldElement<T>> T offset(PointMm<T> point, PointMm<T> from, PointMm<T> to) {
        PointMm<T> way = to.minus(from);
        return point.minus(from)
                .along(way.turned())
                .divide(way.x().hypot(way.y()))
                .abs();
    }

    private static <T extends RealFieldElement<T>> T length(PointMm<T> way) {
        return way.x().hypot(way.y());
    }
}
