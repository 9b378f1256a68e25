// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.util.List;

/**
 * What a conformance check found.
 *
 * @param lines one for each thing that is not as our templates say, in the order of the document
 */
public record CheckReport(List<Line> lines) {
    public CheckReport {
        lines = List.copyOf(lines);
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
