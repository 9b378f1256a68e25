// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * Undoes what a scanner's assumed speed of sound does to an image, where a person states another one.
 *
 * <p>A scanner places an echo at the depth that {@value #ASSUMED_M_PER_S} m/s would give, so that in tissue of speed c a
 * depth z shows as {@code z * 1540 / c}, while the position along an unsteered linear array is that of its elements. The
 * pixels of such an image are therefore {@code c / 1540} times as high as it says: {@code tan(shown) = (1540 / c) *
 * tan(true)}. The beams are taken to run down the image's columns; a stated radius of a disc is left as it is.
 *
 * <p>Source: time of flight, elementary; the assumed speed is the scanners' convention (from memory). Steered or curved
 * arrays bend the image in both directions and are not undone.
 */
public final class SpeedOfSound {
    /** What scanners assume, m/s. */
    public static final double ASSUMED_M_PER_S = 1540;

    /** Slower than fat (about 1450 m/s, from memory) by a margin; design choice. */
    public static final double SLOWEST_M_PER_S = 1400;

    /** Faster than muscle (about 1580 m/s, from memory) by a margin; design choice. */
    public static final double FASTEST_M_PER_S = 1700;

    private SpeedOfSound() {}

    /** The calibration as it is, or with the rows' height for the stated speed and words that say so. */
    public static Calibration applied(OptionalDouble statedMPerS, Calibration calibration) {
        if (statedMPerS.isEmpty()) {
            return calibration;
        }
        PixelSize shown = calibration.pixel();
        double share = statedMPerS.getAsDouble() / ASSUMED_M_PER_S;
        List<String> doubts = new ArrayList<>(calibration.doubts());
        doubts.add(words(statedMPerS.getAsDouble()));
        return new Calibration(
                calibration.source(),
                new PixelSize(shown.mmPerColumn(), shown.mmPerRow() * share),
                calibration.region(),
                calibration.knownDistance(),
                doubts);
    }

    /** How a stated speed changes the numbers, in words. */
    public static String words(double statedMPerS) {
        return String.format(
                Locale.ROOT,
                "Depths are %.1f %% of those the scanner shows: you stated a speed of sound of %.0f m/s, the scanner"
                        + " assumes %.0f.",
                100 * statedMPerS / ASSUMED_M_PER_S,
                statedMPerS,
                ASSUMED_M_PER_S);
    }
}
