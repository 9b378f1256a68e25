// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

/** What a reader of a plan should know that is no limit. */
public enum PlanNote {
    SHALLOWER_THAN_BAND("shallowerThanBand"),
    STEEPER_THAN_BAND("steeperThanBand"),
    NO_HAZARDS_MARKED("noHazardsMarked"),
    NO_NERVE_MARKED("noNerveMarked");

    private final String word;

    PlanNote(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
