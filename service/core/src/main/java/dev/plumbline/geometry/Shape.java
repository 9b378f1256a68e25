// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import java.util.List;

/** What a person drew round a structure. */
public sealed interface Shape {
    /** A round structure; the radius is in millimetres because a pixel may not be square. */
    record Disc(PointPx center, double radiusMm) implements Shape {
        public Disc {
            if (!(radiusMm > 0) || Double.isInfinite(radiusMm)) {
                throw new IllegalArgumentException("A disc has a positive radius.");
            }
        }
    }

    /** A closed outline of three or more points; the last joins the first. */
    record Outline(List<PointPx> points) implements Shape {
        public Outline {
            points = List.copyOf(points);
            if (points.size() < 3) {
                throw new IllegalArgumentException("An outline has at least three points.");
            }
        }
    }
}
