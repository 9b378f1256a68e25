// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

/** A point of the sheet: x to the right, y down. Over a frame the same numbers as column and row. */
record Xy(double x, double y) {
    Xy plus(double dx, double dy) {
        return new Xy(x + dx, y + dy);
    }

    double distanceTo(Xy other) {
        return Math.hypot(x - other.x, y - other.y);
    }

    /** The point that far along the way to the other: 0 here, 1 there. */
    Xy towards(Xy other, double share) {
        return new Xy(x + (other.x - x) * share, y + (other.y - y) * share);
    }
}
