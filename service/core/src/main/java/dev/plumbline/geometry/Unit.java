// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

/** The unit a number is given in at every door; angles are radians only inside a formula. */
public enum Unit {
    DEGREE("deg", Math.toDegrees(1)),
    MILLIMETRE("mm", 1),
    ONE("1", 1);

    private final String ucum;
    private final double perInternal;

    Unit(String ucum, double perInternal) {
        this.ucum = ucum;
        this.perInternal = perInternal;
    }

    /** UCUM code. */
    public String ucum() {
        return ucum;
    }

    /** From radians, millimetres or a plain number to this unit. */
    public double fromInternal(double internal) {
        return internal * perInternal;
    }
}
