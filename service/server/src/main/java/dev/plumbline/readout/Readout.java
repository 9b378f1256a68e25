// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.readout;

import java.util.List;

/**
 * A record in words, ready to be set in any form.
 *
 * @param title what kind of document
 * @param standing how far it is, such as {@code signed}
 * @param head whose and by whom
 * @param sections what was planned, observed and done, in their order
 * @param cautions word for word; empty where the document has none
 * @param uid of the structured report that says all this
 */
public record Readout(
        String title, String standing, List<Line> head, List<Section> sections, String cautions, String uid) {
    public Readout {
        head = List.copyOf(head);
        sections = List.copyOf(sections);
    }

    /** A name and what is said under it. */
    public record Line(String name, String value) {}

    /** Lines under a heading. */
    public record Section(String heading, List<Line> lines) {
        public Section {
            lines = List.copyOf(lines);
        }
    }
}
