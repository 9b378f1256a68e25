// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import java.util.List;

/**
 * How an outline is drawn.
 *
 * @param ink colour of line and filling
 * @param width of the line; 0 draws none
 * @param dash lengths on and off; empty for an unbroken line
 * @param halo share of opacity of the halo beneath the line, 0 for none
 * @param filling share of opacity inside, 0 for none
 */
record Pen(Ink ink, double width, List<Double> dash, double halo, double filling) {
    Pen {
        dash = List.copyOf(dash);
    }

    static Pen line(Ink ink, double width) {
        return new Pen(ink, width, List.of(), 0.7, 0);
    }

    static Pen fill(Ink ink, double filling) {
        return new Pen(ink, 0, List.of(), 0, filling);
    }

    Pen dashed(Double... lengths) {
        return new Pen(ink, width, List.of(lengths), halo, filling);
    }

    Pen withHalo(double share) {
        return new Pen(ink, width, dash, share, filling);
    }

    Pen filled(double share) {
        return new Pen(ink, width, dash, halo, share);
    }

    /** With every length multiplied: pens are described in em and drawn in the sheet's unit. */
    Pen times(double em) {
        return new Pen(ink, width * em, dash.stream().map(length -> length * em).toList(), halo, filling);
    }
}
