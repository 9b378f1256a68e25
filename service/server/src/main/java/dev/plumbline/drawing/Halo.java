// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

/** The band of contrast beneath lines and text that keeps them readable on bright and on dark tissue. */
final class Halo {
    /** Text: width of the band in shares of the type size. */
    static final double TEXT = 0.2;

    static final double TEXT_OPACITY = 0.85;

    private Halo() {}

    /** Wider than the line by its own width on each side. */
    static double width(Pen pen) {
        return 2.6 * pen.width();
    }
}
