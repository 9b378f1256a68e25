// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.procedure;

/** The patient's side. Both sides are two linked cases. */
public enum Laterality {
    RIGHT("right"),
    LEFT("left"),
    MIDLINE("midline");

    private final String word;

    Laterality(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
