// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.agents;

/** How far a volume has come: meant, in the syringe, in the patient, or thrown away. */
public enum Stage {
    PLANNED("planned"),
    DRAWN_UP("drawnUp"),
    GIVEN("given"),
    DISCARDED("discarded");

    private final String word;

    Stage(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }

    /** At these stages there is still time to think again. */
    public boolean reminds() {
        return this == PLANNED || this == DRAWN_UP;
    }
}
