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
        double low = 0;
        double high = 1;
        double[][] axes = {{from.x(), to.x() - from.x(), minX, maxX}, {from.y(), to.y() - from.y(), minY, maxY}};
        for (double[] axis : axes) {
            if (axis[1] == 0) {
                if (axis[0] < axis[2] || axis[0] > axis[3]) {
                    return false;
                }
                continue;
            }
            double a = (axis[2] - axis[0]) / axis[1];
            double b = (axis[3] - axis[0]) / axis[1];
            low = Math.max(low, Math.min(a, b));
            high = Math.min(high, Math.max(a, b));
        }
        return low <= high;
    }
}
