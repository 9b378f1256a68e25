// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How well the inputs are known, as stated.
 *
 * @param markPx standard uncertainty of every marked coordinate in pixels; 1 where absent (design choice, no source)
 * @param scaleRelative relative standard uncertainty of each of the two scale factors; 0.01 where absent (design choice)
 * @param scannerTolerance replaces {@code scaleRelative}: {@code u = max(mm, percent * d) / sqrt 3} on each axis
 */
public record InputUncertainty(
        OptionalDouble markPx, OptionalDouble scaleRelative, Optional<ScannerTolerance> scannerTolerance) {
    /** A scanner's stated distance tolerance; the larger of the two counts. */
    public record ScannerTolerance(double mm, double percent) {}

    public static final InputUncertainty NOTHING_STATED =
            new InputUncertainty(OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty());

    public double markPxOrDefault() {
        return markPx.orElse(1);
    }

    public double scaleRelativeOrDefault() {
        return scaleRelative.orElse(0.01);
    }
}
