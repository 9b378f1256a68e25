// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.procedure;

/** What the patient says about needle or injection. */
public enum Pain {
    NONE("none"),
    PARAESTHESIA("paraesthesia"),
    PAIN("pain"),
    /** Sedated or anaesthetised. */
    NOT_ASSESSABLE("notAssessable");

    private final String word;

    Pain(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
