// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

/** Whether a person stands for what is drawn. */
public enum Standing {
    DRAFT("DRAFT, not signed"),
    SIGNED("Part of a signed record");

    private final String words;

    Standing(String words) {
        this.words = words;
    }

    String words() {
        return words;
    }
}
