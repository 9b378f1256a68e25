// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import dev.plumbline.plan.InPlanePlan;
import dev.plumbline.plan.Limit;
import dev.plumbline.plan.OutOfPlanePlan;
import dev.plumbline.plan.Plan;
import dev.plumbline.plan.PlanQuantity;
import dev.plumbline.plan.PlanRow;
import dev.plumbline.plan.WayOut;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** A plan in words: its text, what forbids it, the numbers, the other paths. */
final class PlanWords {
    private static final List<PlanQuantity> IN_PLANE_COLUMNS = List.of(
            PlanQuantity.ANGLE_TO_SKIN,
            PlanQuantity.ENTRY_DISTANCE,
            PlanQuantity.ENTRY_FROM_PROBE_EDGE,
            PlanQuantity.PATH,
            PlanQuantity.LEAD_IN,
            PlanQuantity.SHORTEST_NEEDLE);
    private static final List<PlanQuantity> OUT_OF_PLANE_COLUMNS = List.of(
            PlanQuantity.ANGLE_TO_SKIN,
            PlanQuantity.PUNCTURE_DISTANCE,
            PlanQuantity.PUNCTURE_FROM_PROBE_EDGE,
            PlanQuantity.PATH,
            PlanQuantity.SHORTEST_NEEDLE);

    private PlanWords() {}

    static String of(Plan plan) {
        List<String> parts = new ArrayList<>();
        parts.add(Terminal.wrapped(plan.text()));
        parts.add(judgement(plan));
        parts.add(numbers(plan));
        if (plan instanceof InPlanePlan inPlane
                && !inPlane.choices().alternatives().isEmpty()) {
            parts.add("Other angles (degrees, mm)\n" + table(inPlane.choices().alternatives(), IN_PLANE_COLUMNS));
        }
        if (plan instanceof OutOfPlanePlan outOfPlane) {
            parts.add("Usual and steep path (degrees, mm)\n" + table(outOfPlane.rows(), OUT_OF_PLANE_COLUMNS));
            parts.add(stepDown(outOfPlane));
        }
        return parts.stream().filter(part -> !part.isBlank()).collect(Collectors.joining("\n\n"));
    }

    private static String judgement(Plan plan) {
        List<String> lines = new ArrayList<>();
        lines.add((plan.source() == Plan.Source.STATED ? "The stated path" : "The proposed path")
                + (plan.feasible()
                        ? " fits the limits you set, for what you marked."
                        : " does not fit the limits you set."));
        Plan.Judgement judged = plan.judgement();
        if (!judged.binding().isEmpty()) {
            lines.add("What forbids it: " + Words.limits(judged.binding()) + ".");
        }
        plan.waysOut().stream().map(WayOut::text).forEach(text -> lines.add("Way out: " + text));
        if (!judged.unchecked().isEmpty()) {
            lines.add("Not checked: " + list(judged.unchecked(), Limit::word) + ".");
        }
        if (!judged.notes().isEmpty()) {
            lines.add("Note: " + list(judged.notes(), note -> note.word()) + ".");
        }
        if (!judged.doubts().isEmpty()) {
            lines.add("Look at: " + list(judged.doubts(), doubt -> doubt.word()) + ".");
        }
        if (!judged.assumptions().isEmpty()) {
            lines.add("Taken for granted: " + list(judged.assumptions(), assumption -> assumption.word()) + ".");
        }
        return String.join("\n", lines);
    }

    static <T> String list(List<T> values, java.util.function.Function<T, String> word) {
        return values.stream().map(word).map(Words::spelledOut).collect(Collectors.joining(", "));
    }

    private static String numbers(Plan plan) {
        TextTable table = new TextTable();
        plan.readings()
                .measurands()
                .forEach(m -> table.row(
                        List.of(Labels.of(m), Words.quantity(plan.readings().of(m), m), "")));
        return table.text();
    }

    private static String table(List<PlanRow> rows, List<PlanQuantity> columns) {
        TextTable table = new TextTable();
        List<String> head = new ArrayList<>(columns.stream().map(Labels::of).toList());
        head.add("fits");
        table.row(head);
        for (PlanRow row : rows) {
            List<String> cells = new ArrayList<>(columns.stream()
                    .map(m -> row.readings().has(m) ? Words.bare(row.readings().of(m)) : Words.NONE)
                    .toList());
            cells.add(row.feasible() ? "yes" : "no: " + Words.limits(row.why()));
            table.row(cells);
        }
        return table.text();
    }

    private static String stepDown(OutOfPlanePlan plan) {
        if (plan.stepDown().isEmpty()) {
            return "";
        }
        TextTable table = new TextTable().row(List.of("from the same puncture: angle", "crosses at", ""));
        plan.stepDown()
                .forEach(step -> table.row(List.of(
                        Words.number(step.angleToSkinDeg().value()) + "\u00b0",
                        Words.number(step.crossingDepthMm().value()) + " mm",
                        "")));
        return table.text();
    }
}
