// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.observation;

/** At which moment of the procedure the frame was saved. */
public enum Phase {
    FINAL_TIP("finalTip"),
    DURING_INJECTION("duringInjection"),
    AFTER_SPREAD("afterSpread"),
    CATHETER("catheter"),
    PRACTICE("practice");

    private final String word;

    Phase(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
