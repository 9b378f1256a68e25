// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import java.util.ArrayList;
import java.util.List;

/** Sets lines of text from a top left corner downwards. */
final class Typesetter {
    private final List<Element> elements = new ArrayList<>();
    private final String kind;
    private double y;

    Typesetter(String kind) {
        this.kind = kind;
    }

    List<Element> elements() {
        return elements;
    }

    double height() {
        return y;
    }

    void space(double height) {
        y += height;
    }

    /** Text broken into lines of at most this width. */
    void paragraph(String text, double x, double width, Element.Type type) {
        for (String line : wrapped(text, width, type)) {
            line(line, x, type);
        }
    }

    private void line(String text, double x, Element.Type type) {
        elements.add(text(kind, text, new Xy(x, y + baseline(type)), type));
        y += Lettering.LINE * type.size();
    }

    /** From the top of a line of text to its base line. */
    static double baseline(Element.Type type) {
        return (Lettering.LINE - Lettering.DESCENT - 0.08) * type.size();
    }

    static Element.Text text(String kind, String text, Xy at, Element.Type type) {
        return new Element.Text(kind, at, text, type, Lettering.width(text, type.size(), type.bold()));
    }

    /** Ends at the point instead of starting there. */
    static Element.Text textEndingAt(String kind, String text, Xy at, Element.Type type) {
        double width = Lettering.width(text, type.size(), type.bold());
        return new Element.Text(kind, at.plus(-width, 0), text, type, width);
    }

    static List<String> wrapped(String text, double width, Element.Type type) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : text.split(" ", -1)) {
            String longer = line.isEmpty() ? word : line + " " + word;
            if (!line.isEmpty() && Lettering.width(longer, type.size(), type.bold()) > width) {
                lines.add(line.toString());
                line.setLength(0);
                line.append(word);
            } else {
                line.setLength(0);
                line.append(longer);
            }
        }
        lines.add(line.toString());
        return lines;
    }
}
