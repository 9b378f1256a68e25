// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.sight;

import dev.plumbline.plan.Approach;
import java.util.Arrays;
import java.util.List;

/** What of the needle is seen at this moment. */
public enum Seen {
    NOTHING("nothing", true, false, false),
    NEAR_PART("nearPart", true, false, false),
    MIDDLE_PART("middlePart", true, false, false),
    FAR_PART("farPart", true, false, false),
    SHAFT_FAINT("shaftFaint", true, false, false),
    SHAFT_NO_TIP("shaftNoTip", true, false, false),
    SHAFT_AND_TIP("shaftAndTip", true, false, true),
    NO_DOT("noDot", false, true, false),
    DOT_TIP_OR_SHAFT("dotTipOrShaft", false, true, false),
    TIP_CONFIRMED("tipConfirmed", false, true, true),
    /** Belongs to both approaches, and counts as not seen. */
    NOT_SURE("notSure", true, true, false);

    private final String word;
    private final boolean inPlane;
    private final boolean outOfPlane;
    private final boolean tipKnown;

    Seen(String word, boolean inPlane, boolean outOfPlane, boolean tipKnown) {
        this.word = word;
        this.inPlane = inPlane;
        this.outOfPlane = outOfPlane;
        this.tipKnown = tipKnown;
    }

    public String word() {
        return word;
    }

    public boolean tipKnown() {
        return tipKnown;
    }

    /** Whether this can be said in the approach. */
    public boolean in(Approach approach) {
        return approach == Approach.IN_PLANE ? inPlane : outOfPlane;
    }

    /** Everything that can be said in the approach. */
    public static List<Seen> all(Approach approach) {
        return Arrays.stream(values()).filter(seen -> seen.in(approach)).toList();
    }
}
