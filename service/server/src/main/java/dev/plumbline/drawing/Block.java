// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import java.util.ArrayList;
import java.util.List;

/** A piece of the text column: its elements with the top left corner at the origin, and its height. */
record Block(List<Element> elements, double height) {
    Block {
        elements = List.copyOf(elements);
    }

    List<Element> at(Xy corner) {
        List<Element> moved = new ArrayList<>();
        for (Element element : elements) {
            moved.add(moved(element, corner));
        }
        return moved;
    }

    private static Element moved(Element element, Xy by) {
        if (element instanceof Element.Trace trace) {
            return new Element.Trace(
                    trace.kind(),
                    trace.points().stream()
                            .map(point -> point.plus(by.x(), by.y()))
                            .toList(),
                    trace.closed(),
                    trace.pen());
        }
        if (element instanceof Element.Oval oval) {
            return new Element.Oval(
                    oval.kind(), oval.center().plus(by.x(), by.y()), oval.radiusX(), oval.radiusY(), oval.pen());
        }
        Element.Text text = (Element.Text) element;
        return new Element.Text(text.kind(), text.at().plus(by.x(), by.y()), text.text(), text.type(), text.width());
    }
}
