// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.agents;

/** Where an agent is put. */
public enum Route {
    PERINEURAL("perineural"),
    FASCIAL_PLANE("fascialPlane"),
    INFILTRATION("infiltration"),
    /** Fits no limit: nobody said. */
    NOT_STATED("notStated");

    private final String word;

    Route(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
