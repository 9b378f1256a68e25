// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.pages;

import com.fasterxml.jackson.databind.JsonNode;
import dev.plumbline.geometry.Reason;
import java.util.List;
import java.util.Locale;

/**
 * One row of a table that puts plan and observation side by side.
 *
 * @param unit with the space in front of it, where there is one
 * @param planned field of the plan in an answer; blank where the plan has none
 * @param observed field of the observation and of the deviation
 */
public record ComparedRow(String words, String unit, String planned, String observed) {
    /** In the order in which people read them. */
    public static final List<ComparedRow> ALL = List.of(
            new ComparedRow("angle to the skin", "\u00b0", "angleToSkinDeg", "angleToSkinDeg"),
            new ComparedRow("entry from midpoint", " mm", "entryDistanceMm", "entryDistanceMm"),
            new ComparedRow("puncture from the beam", " mm", "punctureDistanceMm", "punctureDistanceMm"),
            new ComparedRow("depth of target and tip", " mm", "targetDepthMm", "tipDepthMm"),
            new ComparedRow("depth of target and crossing", " mm", "targetDepthMm", "crossingDepthMm"),
            new ComparedRow("path", " mm", "pathMm", "pathMm"),
            new ComparedRow("tip beyond the target, along the plan", " mm", "", "alongPlanMm"),
            new ComparedRow("tip to the deeper side of the plan", " mm", "", "acrossPlanMm"));

    /** What the plan says; blank where it says nothing. */
    public String planned(JsonNode comparison) {
        return text(comparison.path("plan").path(planned), "");
    }

    /** What an observation says. */
    public String observed(JsonNode observation) {
        return text(observation.path(observed), "");
    }

    /** Observation minus plan. */
    public String difference(JsonNode deviation) {
        return text(deviation.path(observed), "+");
    }

    /** Whether the observation was compared in this; what belongs to the other approach was not. */
    public boolean isIn(JsonNode deviation) {
        return deviation.has(observed)
                && !deviation.path(observed).path("reason").asText().equals(Reason.NOT_IN_THIS_PLANE.word());
    }

    /** What the difference means, in words. */
    public String judged(JsonNode deviation) {
        JsonNode difference = deviation.path(observed);
        if (difference.path("value").isNull()) {
            return "";
        }
        return difference.path("exceedsUncertainty").asBoolean()
                ? "more than the measurement's uncertainty"
                : "no difference that this measurement could show";
    }

    private String text(JsonNode quantity, String sign) {
        if (quantity.isMissingNode()) {
            return "";
        }
        if (quantity.path("value").isNull()) {
            return Wording.spelledOut(quantity.path("reason").asText());
        }
        return String.format(
                Locale.ROOT,
                "%" + sign + ".1f \u00b1 %.1f%s",
                quantity.path("value").asDouble(),
                quantity.path("expandedUncertainty").asDouble(),
                unit);
    }
}
