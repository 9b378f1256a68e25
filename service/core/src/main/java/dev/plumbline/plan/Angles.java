// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

/** The angles to the skin line that a proposal considers, and how closely an angle is compared with a bound. */
final class Angles {
    /** Shallowest entry considered, degrees (design choice). */
    static final double SHALLOWEST_DEG = 5;

    /** Steepest entry considered, degrees. */
    static final double STEEPEST_DEG = 90;

    /** What an angle may be off by through rounding, degrees. */
    static final double ROUNDING_DEG = 1e-9;

    private Angles() {}

    static boolean inBand(double degrees, Constraints.Band band) {
        return band.lowDeg() - ROUNDING_DEG <= degrees && degrees <= band.highDeg() + ROUNDING_DEG;
    }
}
