// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.procedure;

/** What in a log cannot be, or should not have been, as it stands; shown, never mended silently. */
public enum Contradiction {
    PUNCTURE_WITHOUT_STOP_MOMENT("punctureWithoutStopMoment"),
    STOP_MOMENT_TOO_OLD("stopMomentTooOld"),
    CHANGED_SINCE_STOP_MOMENT("changedSinceStopMoment"),
    STOP_MOMENT_FOR_OTHER_SIDE("stopMomentForOtherSide"),
    STOP_MOMENT_FOR_OTHER_BLOCK("stopMomentForOtherBlock"),
    PUNCTURE_WHILE_NEEDLE_IN("punctureWhileNeedleIn"),
    NEEDLE_OUT_WITHOUT_PUNCTURE("needleOutWithoutPuncture"),
    INJECTED_BEFORE_PUNCTURE("injectedBeforePuncture"),
    INJECTED_AFTER_NEEDLE_OUT("injectedAfterNeedleOut"),
    INJECTED_AFTER_STOP("injectedAfterStop"),
    INJECTED_AFTER_BLOOD("injectedAfterBlood"),
    MORE_THAN_DRAWN_UP("moreThanDrawnUp");

    private final String word;

    Contradiction(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
