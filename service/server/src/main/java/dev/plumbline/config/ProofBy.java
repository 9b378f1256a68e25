// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.config;

/** How a sent object is proved to be there. */
public enum ProofBy {
    /** Read back by C-GET and compared. */
    GET("get"),
    /** Storage commitment, and C-GET where no report comes. */
    COMMITMENT("commitment"),
    /** Not at all: sent is the last that is known. */
    NONE("none");

    private final String word;

    ProofBy(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
