// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.sight;

/** A part of the probe, or the needle, that an action moves or keeps where it is. */
public enum Part {
    NOTHING("nothing"),
    /** The end of the probe next to the puncture. */
    NEAR_END("nearEnd"),
    /** The end of the probe over the unseen part. */
    FAR_END("farEnd"),
    WHOLE_PROBE("wholeProbe"),
    NEEDLE("needle"),
    PROBE_AND_NEEDLE("probeAndNeedle");

    private final String word;

    Part(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
