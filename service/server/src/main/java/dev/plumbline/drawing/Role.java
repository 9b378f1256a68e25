// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import java.util.Locale;

/** What an item of a scene is; with its words in the legend, empty where a label on the picture says it. */
public enum Role {
    FAN("entries that fit the limits"),
    HAZARD_MARGIN("margin to keep"),
    HAZARD("hazard, as outlined"),
    NERVE("nerve, as outlined"),
    SKIN(""),
    SKIN_BEYOND("skin line beyond the image, assumed"),
    PROBE(""),
    RULER(""),
    DEPTH_SCALE(""),
    PLAN_LEAD_IN("planned path before the beam shows it"),
    PLAN_PATH("planned path"),
    PROPOSED_LEAD_IN("proposed path before the beam shows it"),
    PROPOSED_PATH("proposed path, not confirmed"),
    PLAN_ANGLE(""),
    ENTRY("planned entry"),
    FIRST_SEEN("where it should first appear"),
    TARGET("target"),
    OBSERVED_LINE("fitted line, extended to the skin"),
    OBSERVED_SHAFT("observed shaft, fitted to the marks"),
    OBSERVED_PATH("from the observed puncture to the crossing"),
    OBSERVED_ANGLE(""),
    SHAFT_MARK("marked shaft point"),
    OBSERVED_ENTRY("observed entry, extrapolated"),
    SEEN_END("deepest seen, may be shaft"),
    TIP("tip, confirmed"),
    CROSSING("needle crosses the image here"),
    DIFFERENCE("difference from the plan");

    private final String legend;

    Role(String legend) {
        this.legend = legend;
    }

    String legend() {
        return legend;
    }

    /** One word for machines: the class of the SVG element. */
    String kind() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
