// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.agents;

/** Whether somebody asked for local anaesthetic given elsewhere today. */
public enum OtherDoses {
    /** Shown as "other doses unknown". */
    NOT_ASKED("notAsked"),
    ASKED_NONE("askedNone"),
    /** They stand among the doses. */
    ASKED_GIVEN("askedGiven");

    private final String word;

    OtherDoses(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
