// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

/** What a person should look at before trusting a number. */
public enum Doubt {
    SHORT_SHAFT("shortShaft"),
    SKIN_ASSUMED("skinAssumed"),
    MIDPOINT_OFF_SKIN("midpointOffSkin"),
    TIP_OFF_SHAFT("tipOffShaft"),
    SCALE_STATED("scaleStated"),
    SCALE_CONTRADICTED("scaleContradicted");

    private final String word;

    Doubt(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
