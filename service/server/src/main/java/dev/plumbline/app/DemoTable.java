// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.app;

import com.fasterxml.jackson.databind.JsonNode;
import dev.plumbline.pages.ComparedRow;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Planned, observed and their difference as a table, from the service's own answer. */
final class DemoTable {
    private DemoTable() {}

    /** One line for every quantity that differs or could. */
    static List<String> lines(JsonNode comparison) {
        JsonNode observed = comparison.path("observations").path(0);
        JsonNode deviation = comparison.path("deviations").path(0);
        List<String> lines = new ArrayList<>();
        lines.add(String.format("    %-40s%18s%18s%20s", "", "planned", "observed", "deviation"));
        for (ComparedRow row : ComparedRow.ALL) {
            if (row.isIn(deviation)) {
                lines.add(String.format(
                        Locale.ROOT,
                        "    %-40s%18s%18s%20s  %s",
                        row.words(),
                        row.planned(comparison),
                        row.observed(observed),
                        row.difference(deviation),
                        row.judged(deviation)));
            }
        }
        return lines;
    }
}
