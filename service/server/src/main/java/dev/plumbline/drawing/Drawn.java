// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** What has been drawn on the stage so far, what labels must keep off, and the labels still to be placed. */
final class Drawn {
    private final List<Element> elements = new ArrayList<>();
    private final Obstacles obstacles = new Obstacles();
    private final List<Wish> wishes = new ArrayList<>();
    private final Map<Role, Xy> arcMiddles = new EnumMap<>(Role.class);

    List<Element> elements() {
        return elements;
    }

    Obstacles obstacles() {
        return obstacles;
    }

    List<Wish> wishes() {
        return wishes;
    }

    /** Where the label of an angle belongs. */
    Map<Role, Xy> arcMiddles() {
        return arcMiddles;
    }

    void line(String kind, Xy from, Xy to, Pen pen) {
        elements.add(new Element.Trace(kind, List.of(from, to), false, pen));
    }
}
