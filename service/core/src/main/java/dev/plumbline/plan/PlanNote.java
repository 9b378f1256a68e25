// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

/** What a reader of a plan should know that is no limit. */
public enum PlanNote {
    SHALLOWER_THAN_BAND("shallowerThanBand", "Shallower than the band: seen better, longer way through tissue."),
    STEEPER_THAN_BAND("steeperThanBand", "Steeper than the band: heel in as far as that goes, then mark again."),
    NO_HAZARDS_MARKED("noHazardsMarked", "Hazards were not marked: nothing was checked."),
    NO_NERVE_MARKED("noNerveMarked", "No nerve was marked: how near the path comes to one is not known.");

    private final String word;
    private final String words;

    PlanNote(String word, String words) {
        this.word = word;
        this.words = words;
    }

    public String word() {
        return word;
    }

    /** As whole sentences. */
    public String words() {
        return words;
    }
}
