// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import java.util.Collection;
import java.util.OptionalDouble;

/** A rectangle of the sheet with upright sides. */
record Box(double minX, double minY, double maxX, double maxY) {
    static Box at(Xy corner, double width, double height) {
        return new Box(corner.x(), corner.y(), corner.x() + width, corner.y() + height);
    }

    static Box around(Xy center, double halfWidth, double halfHeight) {
        return new Box(
                center.x() - halfWidth, center.y() - halfHeight, center.x() + halfWidth, center.y() + halfHeight);
    }

    double width() {
        return maxX - minX;
    }

    double height() {
        return maxY - minY;
    }

    Xy center() {
        return new Xy((minX + maxX) / 2, (minY + maxY) / 2);
    }

    Box grown(double by) {
        return new Box(minX - by, minY - by, maxX + by, maxY + by);
    }

    Box with(Xy point) {
        return new Box(
                Math.min(minX, point.x()),
                Math.min(minY, point.y()),
                Math.max(maxX, point.x()),
                Math.max(maxY, point.y()));
    }

    Box with(Collection<Xy> points) {
        Box box = this;
        for (Xy point : points) {
            box = box.with(point);
        }
        return box;
    }

    Box cutTo(Box limit) {
        return new Box(
                Math.max(minX, limit.minX),
                Math.max(minY, limit.minY),
                Math.min(maxX, limit.maxX),
                Math.min(maxY, limit.maxY));
    }

    boolean holds(Xy point) {
        return minX <= point.x() && point.x() <= maxX && minY <= point.y() && point.y() <= maxY;
    }

    boolean holds(Box other) {
        return minX <= other.minX && other.maxX <= maxX && minY <= other.minY && other.maxY <= maxY;
    }

    boolean overlaps(Box other) {
        return minX < other.maxX && other.minX < maxX && minY < other.maxY && other.minY < maxY;
    }

    /** The point of the box nearest to the given one. */
    Xy nearestTo(Xy point) {
        return new Xy(Math.max(minX, Math.min(maxX, point.x())), Math.max(minY, Math.min(maxY, point.y())));
    }

    /** Share of the way from inside to outside at which the border is crossed; empty if it is not. */
    OptionalDouble exit(Xy inside, Xy outside) {
        double share = Math.min(along(inside.x(), outside.x(), minX, maxX), along(inside.y(), outside.y(), minY, maxY));
        return holds(inside) && share < 1 ? OptionalDouble.of(share) : OptionalDouble.empty();
    }

    private static double along(double from, double to, double min, double max) {
        if (to > max) {
            return (max - from) / (to - from);
        }
        return to < min ? (min - from) / (to - from) : 1;
    }

    /** Whether any part of the segment lies in the box. */
    boolean meets(Xy from, Xy to) {
        if (Math.max(from.x(), to.x()) < minX
                || Math.min(from.x(), to.x()) > maxX
                || Math.max(from.y(), to.y()) < minY
                || Math.min(from.y(), to.y()) > maxY) {
            return false;
        }
        // What is left misses the box only if all four corners lie on one side of its line.
        double dx = to.x() - from.x();
        double dy = to.y() - from.y();
        double a = dx * (minY - from.y()) - dy * (minX - from.x());
        double b = dx * (minY - from.y()) - dy * (maxX - from.x());
        double c = dx * (maxY - from.y()) - dy * (minX - from.x());
        double d = dx * (maxY - from.y()) - dy * (maxX - from.x());
        return Math.min(Math.min(a, b), Math.min(c, d)) <= 0 && Math.max(Math.max(a, b), Math.max(c, d)) >= 0;
    }
}
