// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.sight;

/** What a step does with the needle. There is no word for advancing an unseen needle, so that no file can ask for it. */
public enum NeedleUse {
    STILL("still"),
    BEVEL_TURNED("bevelTurned"),
    /** A small movement that begins backwards and goes no deeper than the needle has been. */
    BACK_FIRST("backFirst"),
    WITHDRAWN("withdrawn"),
    /** A counted amount of fluid after aspiration; the needle itself is held. */
    FLUID("fluid");

    private final String word;

    NeedleUse(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
