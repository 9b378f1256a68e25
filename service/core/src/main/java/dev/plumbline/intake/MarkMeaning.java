// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.intake;

import dev.plumbline.intake.ForeignMark.Form;
import java.util.List;

/** What a mark can mean for a case, and which forms can mean it. */
public enum MarkMeaning {
    TARGET("target", Form.POINT),
    SHAFT("shaft", Form.LINE, Form.POLYLINE),
    SKIN("skin", Form.LINE, Form.POLYLINE),
    TIP("tip", Form.POINT),
    HAZARD("hazard", Form.OUTLINE, Form.POLYLINE, Form.CIRCLE, Form.ELLIPSE),
    NERVE("nerve", Form.OUTLINE, Form.POLYLINE, Form.CIRCLE, Form.ELLIPSE);

    private final String word;
    private final List<Form> forms;

    MarkMeaning(String word, Form... forms) {
        this.word = word;
        this.forms = List.of(forms);
    }

    public String word() {
        return word;
    }

    /** Whether something drawn like this can mean it; a line of two pieces and more can be closed to an outline. */
    boolean fits(Form form) {
        return forms.contains(form);
    }

    /** Whether a frame can hold several of them. */
    boolean several() {
        return this == HAZARD || this == NERVE;
    }
}
