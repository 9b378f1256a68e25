// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.intake;

import dev.plumbline.intake.ForeignMark.Form;

/** What a mark can mean for a case, and which forms can mean it. */
public enum MarkMeaning {
    TARGET("target"),
    SHAFT("shaft"),
    SKIN("skin"),
    TIP("tip"),
    HAZARD("hazard"),
    NERVE("nerve");

    private final String word;

    MarkMeaning(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }

    /** Whether something drawn like this can mean it; a line of several pieces can be closed to an outline. */
    boolean fits(Form form) {
        return switch (this) {
            case TARGET, TIP -> form == Form.POINT;
            case SHAFT, SKIN -> form == Form.LINE || form == Form.POLYLINE;
            case HAZARD, NERVE ->
                form == Form.OUTLINE || form == Form.POLYLINE || form == Form.CIRCLE || form == Form.ELLIPSE;
        };
    }

    /** Whether a frame can hold several of them. */
    boolean several() {
        return this == HAZARD || this == NERVE;
    }
}
