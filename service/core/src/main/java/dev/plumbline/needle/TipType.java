// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.needle;

/** How the tip is ground. */
public enum TipType {
    SHORT_BEVEL("shortBevel"),
    LONG_BEVEL("longBevel"),
    PENCIL_POINT("pencilPoint"),
    TUOHY("tuohy"),
    FACET("facet");

    private final String word;

    TipType(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
