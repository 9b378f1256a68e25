// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import dev.plumbline.geometry.Reading;
import dev.plumbline.geometry.Unit;
import dev.plumbline.plan.InPlanePlan;
import dev.plumbline.plan.Limit;
import dev.plumbline.plan.PlanQuantity;
import dev.plumbline.plan.PlanRow;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/** Other paths as a table that fits a terminal; why one does not fit is numbered, and said below. */
final class RowWords {
    private static final Map<PlanQuantity, String> IN_PLANE = new LinkedHashMap<>();
    private static final Map<PlanQuantity, String> OUT_OF_PLANE = new LinkedHashMap<>();

    static {
        IN_PLANE.put(PlanQuantity.ANGLE_TO_SKIN, "angle");
        IN_PLANE.put(PlanQuantity.ENTRY_DISTANCE, "entry");
        IN_PLANE.put(PlanQuantity.ENTRY_FROM_PROBE_EDGE, "from edge");
        IN_PLANE.put(PlanQuantity.PATH, "path");
        IN_PLANE.put(PlanQuantity.LEAD_IN, "lead-in");
        IN_PLANE.put(PlanQuantity.SHORTEST_NEEDLE, "needle");
        IN_PLANE.put(PlanQuantity.BEAM_INCIDENCE, "beam");
        IN_PLANE.put(PlanQuantity.SPECULAR_RETURN, "mirror");
        IN_PLANE.put(PlanQuantity.LEAST_CLEARANCE, "nearest");
        OUT_OF_PLANE.put(PlanQuantity.ANGLE_TO_SKIN, "angle");
        OUT_OF_PLANE.put(PlanQuantity.PUNCTURE_DISTANCE, "puncture");
        OUT_OF_PLANE.put(PlanQuantity.PUNCTURE_FROM_PROBE_EDGE, "from probe");
        OUT_OF_PLANE.put(PlanQuantity.PATH, "path");
        OUT_OF_PLANE.put(PlanQuantity.SHORTEST_NEEDLE, "needle");
    }

    private final Map<PlanQuantity, String> columns;
    private final List<Limit> reasons = new ArrayList<>();
    private final TextTable table = new TextTable();

    private RowWords(Map<PlanQuantity, String> columns) {
        this.columns = columns;
        List<String> head = new ArrayList<>(columns.values());
        head.add("fits");
        table.row(head);
    }

    /** The alternatives, with the flattest and the steepest that fit; empty without any. */
    static String inPlane(InPlanePlan.Choices choices) {
        if (choices.alternatives().isEmpty()) {
            return "";
        }
        RowWords words = new RowWords(IN_PLANE);
        choices.alternatives().forEach(row -> words.row(row, ""));
        choices.flattest().ifPresent(row -> words.row(row, " flattest"));
        choices.steepest().ifPresent(row -> words.row(row, " steepest"));
        return words.under("Other angles (degrees, mm; entry from midpoint; beam to shaft; mirror echo as a share;"
                + " nearest hazard)");
    }

    /** The usual and the steep row. */
    static String outOfPlane(List<PlanRow> rows) {
        RowWords words = new RowWords(OUT_OF_PLANE);
        rows.forEach(row -> words.row(row, ""));
        return words.under("Usual and steep path (degrees, mm; puncture from the beam)");
    }

    private void row(PlanRow row, String kind) {
        List<String> cells = new ArrayList<>();
        columns.keySet().forEach(quantity -> cells.add(cell(row, quantity)));
        String why = row.why().stream().map(this::number).collect(Collectors.joining(", "));
        cells.add((row.feasible() ? "yes" : "no" + (why.isEmpty() ? "" : " (" + why + ")")) + kind);
        table.row(cells);
    }

    private static String cell(PlanRow row, PlanQuantity quantity) {
        if (!row.readings().has(quantity)) {
            return Words.NONE;
        }
        Reading reading = row.readings().of(quantity);
        boolean share = quantity.unit() != Unit.DEGREE && quantity.unit() != Unit.MILLIMETRE;
        return share && reading instanceof Reading.Seen seen
                ? String.format(Locale.ROOT, "%.2f", seen.value())
                : Words.bare(reading);
    }

    private String number(Limit limit) {
        if (!reasons.contains(limit)) {
            reasons.add(limit);
        }
        return String.valueOf(reasons.indexOf(limit) + 1);
    }

    private String under(String heading) {
        StringBuilder text =
                new StringBuilder(Terminal.wrapped(heading)).append('\n').append(table.text());
        for (int i = 0; i < reasons.size(); i++) {
            text.append('\n')
                    .append(Terminal.wrapped("(" + (i + 1) + ") "
                            + Words.firstUpper(reasons.get(i).words()) + "."));
        }
        return text.toString();
    }
}
