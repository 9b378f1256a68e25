// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/**
 * Records as comma separated values: one header line, CRLF, quotes where needed. Source: RFC 4180. What each column means:
 * {@code docs/records.md}.
 *
 * <p>A text that a spreadsheet would take for a formula gets an apostrophe in front. Source: OWASP, "CSV Injection" (cited
 * from memory). Numbers are numbers of this program and stay as they are.
 */
public final class RecordTable {
    /** Names of the columns, the same as the fields of the JSON list. */
    public static final List<String> COLUMNS = columns();

    private static final Pattern FORMULA = Pattern.compile("[=+\\-@\t\r\n].*", Pattern.DOTALL);
    private static final Pattern QUOTED = Pattern.compile("[\",\r\n]");

    private RecordTable() {}

    private static List<String> columns() {
        List<String> columns = new ArrayList<>(List.of(
                "recordUid",
                "caseId",
                "revision",
                "state",
                "current",
                "time",
                "predecessor",
                "successor",
                "withdrawal",
                "patientId",
                "patientName",
                "studyInstanceUid",
                "accessionNumber",
                "block",
                "laterality",
                "approach",
                "operator",
                "operatorRole",
                "signedBy",
                "observations",
                "differs",
                "differsIn",
                "observation",
                "phase",
                "plannedAngleToSkinDeg",
                "plannedEntryDistanceMm",
                "plannedTargetDepthMm",
                "plannedPathMm",
                "observedAngleToSkinDeg",
                "observedEntryDistanceMm",
                "observedTipDepthMm",
                "observedPathMm"));
        for (String quantity : List.of(
                "AngleToSkinDeg",
                "EntryDistanceMm",
                "TipDepthMm",
                "PathMm",
                "AlongPlanMm",
                "AcrossPlanMm",
                "PunctureDistanceMm",
                "CrossingDepthMm")) {
            columns.add("difference" + quantity);
            columns.add("difference" + quantity + "ExpandedUncertainty");
            columns.add("difference" + quantity + "ExceedsUncertainty");
        }
        return List.copyOf(columns);
    }

    /** The rows of a list, with the header line. */
    public static String csv(JsonNode rows) {
        StringBuilder csv = new StringBuilder(String.join(",", COLUMNS)).append("\r\n");
        for (JsonNode row : rows) {
            csv.append(String.join(
                            ",",
                            COLUMNS.stream().map(name -> cell(row.path(name))).toList()))
                    .append("\r\n");
        }
        return csv.toString();
    }

    static String cell(JsonNode value) {
        if (value.isArray()) {
            List<String> texts = new ArrayList<>();
            value.forEach(each -> texts.add(each.asText()));
            return text(String.join("; ", texts));
        }
        if (value.isNull() || value.isMissingNode()) {
            return "";
        }
        return value.isTextual() ? text(value.textValue()) : value.asText();
    }

    private static String text(String text) {
        String guarded = FORMULA.matcher(text).matches() ? "'" + text : text;
        return QUOTED.matcher(guarded).find() ? "\"" + guarded.replace("\"", "\"\"") + "\"" : guarded;
    }
}
