// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.sight;

/** Which magnitude goes with a step, where it is known; never a direction. */
public enum Measure {
    NONE("none"),
    /** At most this much rotation lies between probe and needle, degrees. */
    ROTATION_BOUND("rotationBoundDeg"),
    /** A single movement of the probe larger than this can pass over the needle, mm. */
    BEAM_THICKNESS("beamThicknessMm"),
    /** The counted amount of fluid, mL. */
    FLUID("fluidMl");

    private final String word;

    Measure(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
