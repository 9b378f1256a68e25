// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.record;

/** What a frame that is kept with a case shows. */
public enum FrameRole {
    PRE_SCAN("preScan"),
    DOPPLER("doppler"),
    NEEDLE("needle"),
    SPREAD("spread"),
    CATHETER("catheter"),
    OTHER("other");

    private final String word;

    FrameRole(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
