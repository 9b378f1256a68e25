// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.agents;

/** What the labelled mass is a mass of; a limit for one says nothing about the other. */
public enum Basis {
    SALT("salt"),
    BASE("base"),
    /** Fits no limit: the label was not read. */
    NOT_STATED("notStated");

    private final String word;

    Basis(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
