// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.procedure;

/** How near whoever supervises is. */
public enum Supervision {
    IN_ROOM("inRoom"),
    AVAILABLE("available"),
    REMOTE("remote"),
    NONE("none");

    private final String word;

    Supervision(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
