// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** What stands beside the picture, from top to bottom. */
public sealed interface Note {
    /** A status in a frame; a broken frame for what nobody has confirmed. */
    record Badge(String text, boolean broken) implements Note {}

    record Paragraph(String text, boolean quiet) implements Note {}

    /** Numbers in columns; the first column is named by the rows. */
    record Table(List<String> columns, List<Row> rows) implements Note {
        public Table {
            columns = List.copyOf(columns);
            rows = List.copyOf(rows);
        }
    }

    /** A line of a table. */
    record Row(String name, List<Cell> cells) {
        public Row {
            cells = List.copyOf(cells);
        }
    }

    /** A number with what is said about it in smaller type. */
    record Cell(String value, String small) {
        static final Cell EMPTY = new Cell("", "");
    }

    /** The words for the line styles that the picture uses. */
    record Legend() implements Note {}

    /** Out-of-plane: the picture seen from the probe's end, where the beam is a line, in millimetres. */
    record SideView(Optional<Crossing> planned, Optional<Crossing> observed, OptionalDouble probeHalfThicknessMm)
            implements Note {}

    /**
     * From a puncture this far from the beam to a crossing this deep.
     *
     * @param path how the way between them is drawn
     */
    record Crossing(Role path, double punctureDistanceMm, double depthMm, String angle) {}
}
