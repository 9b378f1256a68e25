// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import org.apache.commons.math3.RealFieldElement;

/**
 * A point or a direction in millimetres: either on the display's axes (x right, y down) or in the probe frame (x = u
 * along the skin line towards the needle's side, y = w into the tissue).
 */
public record PointMm<T extends RealFieldElement<T>>(T x, T y) {
    public PointMm<T> minus(PointMm<T> other) {
        return new PointMm<>(x.subtract(other.x), y.subtract(other.y));
    }

    public PointMm<T> plus(PointMm<T> direction, T distance) {
        return new PointMm<>(x.add(direction.x.multiply(distance)), y.add(direction.y.multiply(distance)));
    }

    /** Scalar product. */
    public T along(PointMm<T> direction) {
        return x.multiply(direction.x).add(y.multiply(direction.y));
    }

    /** A quarter turn: x axis to y axis. */
    public PointMm<T> turned() {
        return new PointMm<>(y.negate(), x);
    }

    public PointMm<T> opposite() {
        return new PointMm<>(x.negate(), y.negate());
    }
}
