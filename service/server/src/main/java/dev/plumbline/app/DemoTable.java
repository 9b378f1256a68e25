// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.app;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Planned, observed and their difference as a table, from the service's own answer. */
final class DemoTable {
    private static final List<Row> ROWS = List.of(
            new Row("angle to the skin", "°", "angleToSkinDeg", "angleToSkinDeg"),
            new Row("entry from the probe's middle", " mm", "entryDistanceMm", "entryDistanceMm"),
            new Row("puncture from the beam", " mm", "punctureDistanceMm", "punctureDistanceMm"),
            new Row("depth of target and tip", " mm", "targetDepthMm", "tipDepthMm"),
            new Row("depth of target and crossing", " mm", "targetDepthMm", "crossingDepthMm"),
            new Row("path", " mm", "pathMm", "pathMm"),
            new Row("tip beyond the target, along the plan", " mm", "", "alongPlanMm"),
            new Row("tip to the deeper side of the plan", " mm", "", "acrossPlanMm"));

    private DemoTable() {}

    private record Row(String words, String unit, String planned, String observed) {}

    /** One line for every quantity that differs or could. */
    static List<String> lines(JsonNode comparison) {
        JsonNode observed = comparison.path("observations").path(0);
        JsonNode deviation = comparison.path("deviations").path(0);
        List<String> lines = new ArrayList<>();
        lines.add(String.format("    %-40s%18s%18s%20s", "", "planned", "observed", "difference"));
        for (Row row : ROWS) {
            JsonNode difference = deviation.path(row.observed());
            if (!difference.isMissingNode()) {
                lines.add(String.format(
                        Locale.ROOT,
                        "    %-40s%18s%18s%20s  %s",
                        row.words(),
                        text(comparison.path("plan").path(row.planned()), row.unit(), ""),
                        text(observed.path(row.observed()), row.unit(), ""),
                        text(difference, row.unit(), "+"),
                        judged(difference)));
            }
        }
        return lines;
    }

    private static String text(JsonNode quantity, String unit, String sign) {
        if (quantity.isMissingNode()) {
            return "";
        }
        if (quantity.path("value").isNull()) {
            return quantity.path("reason").asText();
        }
        String format = "%" + sign + ".1f ± %.1f%s";
        return String.format(
                Locale.ROOT,
                format,
                quantity.path("value").asDouble(),
                quantity.path("expandedUncertainty").asDouble(),
                unit);
    }

    private static String judged(JsonNode difference) {
        if (difference.path("value").isNull()) {
            return "";
        }
        return difference.path("exceedsUncertainty").asBoolean()
                ? "more than the measurement's uncertainty"
                : "no difference that this measurement could show";
    }
}
