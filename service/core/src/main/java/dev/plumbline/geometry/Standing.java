// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

/** How well a figure in a data file is founded; shown wherever the figure is. */
public enum Standing {
    /** The source was read. */
    CITED("cited"),
    /** A source is known to exist but was not read for this file. */
    FROM_MEMORY("fromMemory"),
    /** What the trade does; no source. */
    COMMON_PRACTICE("commonPractice"),
    /** Chosen for this program or by the site; no source. */
    CHOSEN("chosen"),
    /** Read off the device's own label by the site. */
    LABEL("label");

    private final String word;

    Standing(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
