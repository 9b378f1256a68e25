// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import java.util.List;

/**
 * A label and the points it may stand at.
 *
 * @param anchors of equal right
 * @param inside the first anchor is the middle of an area that the label may lie in
 */
record Wish(Role role, List<String> lines, List<Xy> anchors, boolean inside) {
    Wish {
        lines = lines.stream().filter(line -> !line.isEmpty()).toList();
        anchors = List.copyOf(anchors);
    }

    static Wish at(Role role, List<String> lines, Xy point) {
        return new Wish(role, lines, List.of(point), false);
    }
}
