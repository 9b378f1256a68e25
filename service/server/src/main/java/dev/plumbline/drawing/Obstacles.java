// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import java.util.ArrayList;
import java.util.List;

/** What labels must not cover (boxes) and what they should rather not cover (lines). */
final class Obstacles {
    private final List<Box> boxes = new ArrayList<>();
    private final List<Xy[]> segments = new ArrayList<>();

    void keepOff(Box box) {
        boxes.add(box);
    }

    void path(List<Xy> points, boolean closed) {
        for (int i = 0; i + 1 < points.size(); i++) {
            segments.add(new Xy[] {points.get(i), points.get(i + 1)});
        }
        if (closed) {
            segments.add(new Xy[] {points.get(points.size() - 1), points.get(0)});
        }
    }

    boolean forbid(Box box) {
        for (Box taken : boxes) {
            if (box.overlaps(taken)) {
                return true;
            }
        }
        return false;
    }

    boolean cross(Xy from, Xy to) {
        return boxes.stream().anyMatch(box -> box.meets(from, to));
    }

    int linesUnder(Box box) {
        int count = 0;
        for (Xy[] segment : segments) {
            if (box.meets(segment[0], segment[1])) {
                count++;
            }
        }
        return count;
    }
}
