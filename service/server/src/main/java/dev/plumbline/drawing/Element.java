// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import java.util.List;

/** What is on a sheet, at its place and with its pen. */
sealed interface Element {
    /** What it stands for, one word; the class of the SVG element. */
    String kind();

    /** Straight pieces from point to point. */
    record Trace(String kind, List<Xy> points, boolean closed, Pen pen) implements Element {
        public Trace {
            points = List.copyOf(points);
        }
    }

    /** A circle, or on pixels that are not square an ellipse. */
    record Oval(String kind, Xy center, double radiusX, double radiusY, Pen pen) implements Element {}

    /**
     * One line of text.
     *
     * @param at left end of the base line
     * @param width as measured; SVG viewers with other fonts fit the text into it
     */
    record Text(String kind, Xy at, String text, Type type, double width) implements Element {}

    /** Size, weight and colour of text; a halo where it may lie over an image. */
    record Type(double size, boolean bold, Ink ink, boolean halo) {
        Type times(double em) {
            return new Type(size * em, bold, ink, halo);
        }
    }
}
