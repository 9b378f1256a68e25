// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.util.List;

/**
 * What a conformance check found.
 *
 * @param lines one for each thing that is not as our templates say, in the order of the document
 * @param rows of the templates that content items were taken for, in the order in which they were met
 */
public record CheckReport(List<Line> lines, List<Row> rows) {
    public CheckReport {
        lines = List.copyOf(lines);
        rows = List.copyOf(rows);
    }

    /**
     * One row of a template and what it was found for.
     *
     * @param title such as {@code TID 300 row 14}
     * @param items how many content items
     * @param first where the first of them stands
     */
    public record Row(String title, int items, String first) {
        Row once() {
            return new Row(title, items + 1, first);
        }
    }

    /**
     * One finding.
     *
     * @param place position in the tree and concept, such as {@code 1.9.1.12 Depth}; for the header a tag
     * @param text what is wrong there, in words
     */
    public record Line(String place, String text) {
        @Override
        public String toString() {
            return place + ": " + text;
        }
    }

    public boolean conforms() {
        return lines.isEmpty();
    }
}
