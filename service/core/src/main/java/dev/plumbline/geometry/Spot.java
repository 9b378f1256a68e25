// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

/** A point of the probe frame at the nominal values, millimetres: u along the skin line, w into the tissue. */
public record Spot(double u, double w) {
    public Spot minus(Spot other) {
        return new Spot(u - other.u, w - other.w);
    }

    public Spot plus(Spot direction, double times) {
        return new Spot(u + times * direction.u, w + times * direction.w);
    }

    public double dot(Spot other) {
        return u * other.u + w * other.w;
    }

    /** Third component of the vector product; its sign tells the side. */
    public double cross(Spot other) {
        return u * other.w - w * other.u;
    }

    public double length() {
        return Math.sqrt(u * u + w * w);
    }

    public double distanceTo(Spot other) {
        return minus(other).length();
    }
}
