// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import java.util.ArrayList;
import java.util.List;

/** A line with a head at its end; nothing where both ends are so close that symbols cover it. */
final class Arrow {
    private static final double HEAD_EM = 0.5;
    private static final double SHORTEST_EM = 1;

    private Arrow() {}

    static List<Element> between(String kind, Xy from, Xy to, Pen pen, double em) {
        double length = from.distanceTo(to);
        List<Element> arrow = new ArrayList<>();
        if (length < SHORTEST_EM * em) {
            return arrow;
        }
        arrow.add(new Element.Trace(kind, List.of(from, to), false, pen));
        double dx = (to.x() - from.x()) / length;
        double dy = (to.y() - from.y()) / length;
        double head = Math.min(HEAD_EM * em, length / 2);
        Xy left = to.plus((-dx - 0.5 * dy) * head, (-dy + 0.5 * dx) * head);
        Xy right = to.plus((-dx + 0.5 * dy) * head, (-dy - 0.5 * dx) * head);
        arrow.add(new Element.Trace(kind + "-head", List.of(left, to, right), false, pen));
        return arrow;
    }
}
