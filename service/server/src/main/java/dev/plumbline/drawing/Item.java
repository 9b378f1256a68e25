// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import dev.plumbline.geometry.PointPx;
import java.util.List;

/** One thing to see, in pixels of the frame; points may lie outside the frame. */
public sealed interface Item {
    Role role();

    /** Straight pieces from point to point; closed: an outline. */
    record Run(Role role, List<PointPx> points, boolean closed) implements Item {
        public Run {
            points = List.copyOf(points);
        }

        static Run line(Role role, PointPx from, PointPx to) {
            return new Run(role, List.of(from, to), false);
        }
    }

    /** Round in the patient, so an ellipse on pixels that are not square. */
    record Disc(Role role, PointPx center, double radiusMm) implements Item {}

    /** A point with the symbol of its role. */
    record Spot(Role role, PointPx at) implements Item {}

    /**
     * Words that belong to a thing and are put near it where there is room.
     *
     * @param anchors points of the thing, of equal right
     * @param inside the first anchor is the middle of an outline, where the words may stand
     */
    record Label(Role role, List<String> lines, List<PointPx> anchors, boolean inside) implements Item {
        public Label {
            lines = List.copyOf(lines);
            anchors = List.copyOf(anchors);
        }

        static Label at(Role role, List<String> lines, PointPx point) {
            return new Label(role, lines, List.of(point), false);
        }
    }

    /**
     * A scale in millimetres.
     *
     * @param zero where it starts
     * @param end where it ends, {@code lengthMm} from zero
     * @param outward a point beside zero, on the side where ticks and numbers go
     * @param caption what it counts from; may be empty
     */
    record Ruler(Role role, PointPx zero, PointPx end, double lengthMm, PointPx outward, String caption)
            implements Item {}

    /**
     * The transducer's face on the skin.
     *
     * @param face from one end to the other
     * @param outward a point beside the midpoint, away from the patient
     */
    record Probe(Role role, List<PointPx> face, PointPx midpoint, PointPx outward) implements Item {
        public Probe {
            face = List.copyOf(face);
        }
    }

    /** The angle at {@code corner} between the directions to two points, measured in millimetres. */
    record Angle(Role role, PointPx corner, PointPx first, PointPx second) implements Item {}
}
