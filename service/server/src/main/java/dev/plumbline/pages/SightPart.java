// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.pages;

import dev.plumbline.plan.Approach;
import dev.plumbline.sight.Seen;

/** What is seen of the needle, and the next step that follows from it. */
record SightPart() {

    /** Shown beside every suggestion. */
    private static final String CAUTION =
            "suggestion from what you said you see; if in doubt, withdraw and ask for help";

    void write(Html html) {
        html.open("section", "class", "sight", "aria-labelledby", "sight-title");
        html.element("h2", "What is seen of the needle?", "id", "sight-title");
        html.open("div", "class", "touch", "id", "states");
        for (Seen seen : Seen.values()) {
            html.element(
                    "button",
                    words(seen),
                    "type",
                    "button",
                    "class",
                    "big",
                    "data-state",
                    seen.word(),
                    "data-in-plane",
                    String.valueOf(Seen.all(Approach.IN_PLANE).contains(seen)),
                    "data-out-of-plane",
                    String.valueOf(Seen.all(Approach.OUT_OF_PLANE).contains(seen)),
                    "aria-pressed",
                    "false");
        }
        html.end();
        html.open("div", "class", "card", "id", "card", "role", "region", "aria-labelledby", "card-title");
        html.element("h3", "Next step", "id", "card-title");
        html.open("div", "id", "card-words", "aria-live", "polite");
        html.element("p", "", "id", "card-action", "class", "action-words");
        html.element("p", "", "id", "card-amount");
        html.element("p", "", "id", "card-reason");
        html.open("ul", "id", "card-must-not", "class", "plain").end();
        html.end();
        html.element("p", CAUTION, "id", "card-caution", "class", "card-caution");
        html.open("div", "class", "touch", "id", "card-touch", "hidden", "");
        html.element("button", "Tried: seen as before", "type", "button", "class", "big", "id", "tried-same");
        html.element(
                "button",
                "Tried: seen otherwise",
                "type",
                "button",
                "class",
                "big",
                "id",
                "tried-other",
                "aria-pressed",
                "false");
        html.end();
        html.element("p", "", "id", "passes-left", "class", "hint");
        html.end().end();
    }

    private static String words(Seen each) {
        return switch (each) {
            case NOTHING -> "Nothing";
            case NEAR_PART -> "Near part, far part not";
            case MIDDLE_PART -> "Middle only";
            case FAR_PART -> "Far part, near part not";
            case SHAFT_FAINT -> "Shaft, but faint";
            case SHAFT_NO_TIP -> "Shaft, tip not";
            case SHAFT_AND_TIP -> "Shaft and tip";
            case NO_DOT -> "No dot";
            case DOT_TIP_OR_SHAFT -> "A dot: tip or shaft";
            case TIP_CONFIRMED -> "Tip confirmed";
            case NOT_SURE -> "Not sure";
        };
    }
}
