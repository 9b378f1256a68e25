// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

/** What a person should look at before trusting a number. */
public enum Doubt {
    SHORT_SHAFT("shortShaft", "the shaft is seen over so short a length that its angle is uncertain"),
    SKIN_ASSUMED("skinAssumed", "nobody marked the skin, the top edge of the measuring region was taken"),
    MIDPOINT_OFF_SKIN("midpointOffSkin", "the marked midpoint lies more than 3 mm off the skin line"),
    TIP_OFF_SHAFT("tipOffShaft", "the marked tip lies off the shaft's line"),
    SCALE_STATED("scaleStated", "the scale was stated by a person, it does not come with the frame"),
    SCALE_CONTRADICTED("scaleContradicted", "the stated scale and the one in the frame differ by more than 1 %");

    private final String word;
    private final String words;

    Doubt(String word, String words) {
        this.word = word;
        this.words = words;
    }

    public String word() {
        return word;
    }

    /** As a clause: "the marked tip lies off the shaft's line". */
    public String words() {
        return words;
    }
}
