// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import dev.plumbline.deviation.Comparison;
import dev.plumbline.deviation.Deviation;
import dev.plumbline.deviation.DeviationQuantity;
import dev.plumbline.geometry.Assumption;
import dev.plumbline.geometry.Doubt;
import dev.plumbline.geometry.Measurand;
import dev.plumbline.geometry.Readings;
import dev.plumbline.observation.Observation;
import dev.plumbline.observation.ObservationQuantity;
import dev.plumbline.plan.Plan;
import dev.plumbline.plan.PlanQuantity;
import dev.plumbline.record.CaseDocument;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Planned, observed and the difference, one table for each observation. */
final class ComparisonWords {
    private static final String UNCERTAINTY = "\u00b1 is the expanded uncertainty (k = 2).";

    /** Which planned and observed quantity a difference is between; along and across the plan have neither. */
    private static final Map<DeviationQuantity, Sides> SIDES = new EnumMap<>(Map.of(
            DeviationQuantity.ANGLE_TO_SKIN, new Sides(PlanQuantity.ANGLE_TO_SKIN, ObservationQuantity.ANGLE_TO_SKIN),
            DeviationQuantity.ENTRY_DISTANCE,
                    new Sides(PlanQuantity.ENTRY_DISTANCE, ObservationQuantity.ENTRY_DISTANCE),
            DeviationQuantity.TIP_DEPTH, new Sides(PlanQuantity.TARGET_DEPTH, ObservationQuantity.TIP_DEPTH),
            DeviationQuantity.PATH, new Sides(PlanQuantity.PATH, ObservationQuantity.PATH),
            DeviationQuantity.PUNCTURE_DISTANCE,
                    new Sides(PlanQuantity.PUNCTURE_DISTANCE, ObservationQuantity.PUNCTURE_DISTANCE),
            DeviationQuantity.CROSSING_DEPTH,
                    new Sides(PlanQuantity.TARGET_DEPTH, ObservationQuantity.CROSSING_DEPTH)));

    private ComparisonWords() {}

    private record Sides(PlanQuantity planned, ObservationQuantity observed) {}

    static String of(Comparison comparison, CaseDocument document) {
        List<String> parts = new ArrayList<>();
        parts.add(Terminal.wrapped(comparison.plan().text()));
        for (int i = 0; i < comparison.observations().size(); i++) {
            parts.add(one(
                    comparison.plan(),
                    comparison.observations().get(i),
                    comparison.deviations().get(i)));
        }
        parts.add(MarkWords.repeated(document));
        parts.add(comparison.observations().isEmpty() ? "Nothing was observed." : UNCERTAINTY);
        return parts.stream().filter(part -> !part.isEmpty()).collect(Collectors.joining("\n\n"));
    }

    private static String one(Plan plan, Observation observation, Deviation deviation) {
        TextTable table = new TextTable().row(List.of("", "planned", "observed", "observed - planned", ""));
        for (DeviationQuantity quantity : deviation.readings().measurands()) {
            Optional<Sides> sides = Optional.ofNullable(SIDES.get(quantity));
            table.row(List.of(
                    Labels.of(quantity),
                    sides.map(s -> cell(plan.readings(), s.planned())).orElse(""),
                    sides.map(s -> cell(observation.readings(), s.observed())).orElse(""),
                    Words.difference(deviation.readings().of(quantity), quantity),
                    Words.meaning(deviation.readings().of(quantity))));
        }
        String phase =
                observation.phase().map(p -> ", " + Words.spelledOut(p.word())).orElse("");
        return "Observation " + observation.id() + phase + "\n" + table.text() + seen(observation);
    }

    private static <M extends Enum<M> & Measurand> String cell(Readings<M> readings, M measurand) {
        return readings.has(measurand) ? Words.quantity(readings.of(measurand), measurand) : "";
    }

    private static String seen(Observation observation) {
        StringBuilder lines = new StringBuilder();
        for (ObservationQuantity quantity : List.of(
                ObservationQuantity.DEEPEST_SEEN_DEPTH,
                ObservationQuantity.SEEN_LENGTH,
                ObservationQuantity.TIP_TO_TARGET)) {
            if (observation.readings().has(quantity)) {
                lines.append("\n").append(Labels.of(quantity)).append(": ");
                lines.append(Words.quantity(observation.readings().of(quantity), quantity));
            }
        }
        sentence(lines, "Look again: ", PlanWords.list(observation.doubts(), Doubt::words));
        observation.rotationWords().ifPresent(words -> lines.append('\n').append(Terminal.wrapped(words)));
        sentence(lines, "Taken for granted: ", PlanWords.list(observation.assumptions(), Assumption::words));
        return lines.toString();
    }

    private static void sentence(StringBuilder lines, String start, String clauses) {
        if (!clauses.isEmpty()) {
            lines.append('\n').append(Terminal.wrapped(start + clauses + "."));
        }
    }
}
