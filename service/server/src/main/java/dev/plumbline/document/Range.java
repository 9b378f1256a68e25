// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import dev.plumbline.geometry.SpeedOfSound;

/**
 * What a number in the document may be, finite always. The outer bounds only keep arithmetic finite (design choice); what
 * makes sense for a case is judged where it is computed.
 *
 * @param lowOpen the lower bound itself is not taken
 * @param words how a person reads it
 */
record Range(double low, boolean lowOpen, double high, String words) {
    private static final double MOST_MM = 10_000;

    static final Range LENGTH = new Range(0, true, MOST_MM, "a length above 0 and up to 10000 mm");
    static final Range DISTANCE = new Range(0, false, MOST_MM, "a distance from 0 to 10000 mm");
    static final Range SIGNED = new Range(-MOST_MM, false, MOST_MM, "a distance from -10000 to 10000 mm");
    static final Range ANGLE = new Range(0, true, 90, "an angle above 0 and up to 90 degrees");
    static final Range ROTATION = new Range(0, false, 90, "an angle from 0 to 90 degrees");
    static final Range COORDINATE = new Range(-1e6, false, 1e6, "a pixel coordinate on the frame");
    static final Range MARK_SPREAD = new Range(0, true, 1000, "a standard uncertainty above 0 and up to 1000 pixels");
    static final Range SHARE = new Range(0, false, 1, "a share from 0 to 1");
    static final Range PERCENT = new Range(0, false, 100, "from 0 to 100 per cent");
    static final Range SPEED_OF_SOUND = new Range(
            SpeedOfSound.SLOWEST_M_PER_S,
            false,
            SpeedOfSound.FASTEST_M_PER_S,
            "a speed of sound from 1400 to 1700 m/s");
    static final Range PIXEL_SIZE = new Range(1e-6, false, 100, "from 0.000001 to 100 mm per pixel");

    static final Range VOLUME = new Range(0, false, 500, "a volume from 0 to 500 mL");
    static final Range VOLUME_GIVEN = new Range(0, true, 500, "a volume above 0 and up to 500 mL");
    static final Range PERCENT_IN_VOLUME = new Range(0, true, 100, "a concentration above 0 and up to 100 per cent");
    static final Range MG_PER_ML = new Range(0, true, 1000, "a concentration above 0 and up to 1000 mg/mL");
    static final Range MICROGRAMS_PER_ML =
            new Range(0, true, 1_000_000, "a concentration above 0 and up to 1000000 micrograms/mL");
    static final Range MASS_MG = new Range(0, true, 100_000, "a mass above 0 and up to 100000 mg");
    static final Range WEIGHT_KG = new Range(0.3, false, 500, "a weight from 0.3 to 500 kg");
    static final Range HEIGHT_CM = new Range(20, false, 300, "a height from 20 to 300 cm");
    static final Range PRESSURE = new Range(0, false, 1_000_000, "a reading from 0");

    boolean holds(double value) {
        return Double.isFinite(value) && (lowOpen ? low < value : low <= value) && value <= high;
    }
}
