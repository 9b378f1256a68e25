// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import dev.plumbline.geometry.Assumption;
import dev.plumbline.geometry.Doubt;
import dev.plumbline.geometry.Reading;
import dev.plumbline.geometry.Reason;
import dev.plumbline.needle.NeedleCatalogue;
import dev.plumbline.plan.InPlanePlan;
import dev.plumbline.plan.Limit;
import dev.plumbline.plan.NeedleSuggestion;
import dev.plumbline.plan.OutOfPlanePlan;
import dev.plumbline.plan.Plan;
import dev.plumbline.plan.PlanNote;
import dev.plumbline.plan.PlanQuantity;
import dev.plumbline.plan.SetUp;
import dev.plumbline.plan.SpecularReturn;
import dev.plumbline.plan.WayOut;
import dev.plumbline.record.CaseDocument;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;

/** A plan in words: its text, what forbids it, the numbers, the other paths. */
final class PlanWords {
    private PlanWords() {}

    static String of(Plan plan, CaseDocument document, NeedleCatalogue needles) {
        List<String> parts = new ArrayList<>();
        parts.add(Terminal.wrapped(plan.text()));
        parts.add(judgement(plan));
        parts.add(numbers(plan));
        parts.add(equipment(plan, document, needles));
        parts.add(MarkWords.repeated(document));
        if (plan instanceof InPlanePlan inPlane) {
            parts.add(RowWords.inPlane(inPlane.choices()));
        }
        if (plan instanceof OutOfPlanePlan outOfPlane) {
            parts.add(RowWords.outOfPlane(outOfPlane.rows()));
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
            lines.add("What forbids it: " + list(judged.binding(), Limit::words) + ".");
        }
        plan.waysOut().stream()
                .map(WayOut::text)
                .filter(text -> !plan.text().contains(text))
                .forEach(text -> lines.add("Way out: " + text));
        if (!judged.unchecked().isEmpty()) {
            lines.add(
                    "Not checked, because something was not stated: " + list(judged.unchecked(), Limit::subject) + ".");
        }
        judged.notes().stream()
                .map(PlanNote::words)
                .filter(words -> !plan.text().contains(words))
                .forEach(lines::add);
        if (!judged.doubts().isEmpty()) {
            lines.add("Look again: " + list(judged.doubts(), Doubt::words) + ".");
        }
        if (!judged.assumptions().isEmpty()) {
            lines.add("Taken for granted: " + list(judged.assumptions(), Assumption::words) + ".");
        }
        return lines.stream().map(Terminal::wrapped).collect(Collectors.joining("\n"));
    }

    static <T> String list(List<T> values, Function<T, String> words) {
        return values.stream().map(words).collect(Collectors.joining("; "));
    }

    /** How to set the machine, and which needle of the list reaches. */
    private static String equipment(Plan plan, CaseDocument document, NeedleCatalogue needles) {
        NeedleSuggestion suggestion = NeedleSuggestion.of(plan, document.needle(), needles);
        StringBuilder text = new StringBuilder(Terminal.wrapped(SetUp.of(plan).text()));
        text.append('\n').append(Terminal.wrapped(suggestion.text()));
        if (!suggestion.choices().isEmpty()) {
            text.append('\n')
                    .append(Terminal.wrapped(
                            "Its resistance: " + suggestion.choices().get(0).resistanceText()));
        }
        return text.toString();
    }

    /** Where no path fits, one sentence says so; the table does not repeat it for every line. */
    private static boolean says(Plan plan, PlanQuantity quantity) {
        return plan.readings().has(quantity)
                && !plan.readings().of(quantity).equals(Reading.notSeen(Reason.INFEASIBLE));
    }

    private static String numbers(Plan plan) {
        TextTable table = new TextTable();
        plan.readings().measurands().stream()
                .filter(m -> says(plan, m))
                .forEach(m -> table.row(
                        List.of(Labels.of(m), Words.quantity(plan.readings().of(m), m), "")));
        boolean mirrored = says(plan, PlanQuantity.SPECULAR_RETURN);
        return table.text() + (mirrored ? "\n" + Terminal.wrapped("Mirror echo. " + SpecularReturn.WORDS) : "");
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
