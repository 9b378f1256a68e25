// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.procedure;

/** Where injected fluid was seen to go. */
public enum Spread {
    TARGET("target"),
    PLANE("plane"),
    ELSEWHERE("elsewhere"),
    NERVE_SWELLING("nerveSwelling"),
    NOT_SEEN("notSeen"),
    NOT_ASSESSED("notAssessed");

    private final String word;

    Spread(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
