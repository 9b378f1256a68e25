// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

/** An angle; a name beside it says between what. */
public record Angle(double radians) {
    public Angle {
        if (!Double.isFinite(radians)) {
            throw new IllegalArgumentException("An angle is finite.");
        }
    }

    public static Angle ofDegrees(double degrees) {
        return new Angle(Math.toRadians(degrees));
    }

    public double degrees() {
        return Math.toDegrees(radians);
    }
}
