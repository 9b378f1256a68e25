// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import dev.plumbline.deviation.Deviation;
import dev.plumbline.deviation.DeviationQuantity;
import dev.plumbline.geometry.Measurand;
import dev.plumbline.geometry.Reading;
import dev.plumbline.geometry.Readings;
import dev.plumbline.observation.Observation;
import dev.plumbline.observation.ObservationQuantity;
import dev.plumbline.plan.InPlanePlan;
import dev.plumbline.plan.Plan;
import dev.plumbline.plan.PlanQuantity;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The numbers beside the picture: the plan's alone, or planned, observed and their difference. */
final class NumbersTable {
    private static final String NONE = "\u2013";

    private NumbersTable() {}

    static Note.Table ofPlan(Plan plan) {
        List<Note.Row> rows = new ArrayList<>();
        for (Line line : plan instanceof InPlanePlan ? Line.IN_PLANE_PLAN : Line.OUT_OF_PLANE_PLAN) {
            if (line.plan().filter(plan.readings()::has).isPresent()) {
                rows.add(new Note.Row(line.name(), List.of(planned(plan, line))));
            }
        }
        return new Note.Table(List.of("plan"), rows);
    }

    static Note.Table compared(Plan plan, Observation observation, Deviation deviation) {
        List<Note.Row> rows = new ArrayList<>();
        for (Line line : plan instanceof InPlanePlan ? Line.IN_PLANE : Line.OUT_OF_PLANE) {
            List<Note.Cell> cells =
                    List.of(planned(plan, line), observed(plan, observation, line), difference(deviation, line));
            if (!cells.stream().allMatch(Note.Cell.EMPTY::equals)) {
                rows.add(new Note.Row(line.name(), cells));
            }
        }
        return new Note.Table(List.of("plan", "observed", "difference"), rows);
    }

    private static Note.Cell planned(Plan plan, Line line) {
        return line.plan()
                .filter(plan.readings()::has)
                .map(quantity -> cell(plan.readings().of(quantity), quantity, 0))
                .orElse(Note.Cell.EMPTY);
    }

    private static Note.Cell observed(Plan plan, Observation observation, Line line) {
        if (line.observed().filter(observation.readings()::has).isEmpty()) {
            return Note.Cell.EMPTY;
        }
        ObservationQuantity quantity = line.observed().get();
        double offset = line.fromEdge() ? edge(plan.readings()) : 0;
        return cell(observation.readings().of(quantity), quantity, offset);
    }

    /** From the probe's midpoint to the edge that entries are counted from, as the plan has it. */
    private static double edge(Readings<PlanQuantity> plan) {
        return value(plan, PlanQuantity.ENTRY_DISTANCE)
                .flatMap(middle ->
                        value(plan, PlanQuantity.ENTRY_FROM_PROBE_EDGE).map(edge -> middle - edge))
                .orElse(0.0);
    }

    private static Optional<Double> value(Readings<PlanQuantity> readings, PlanQuantity quantity) {
        return readings.has(quantity)
                ? readings.of(quantity).fold(seen -> Optional.of(seen.value()), why -> Optional.empty())
                : Optional.empty();
    }

    private static Note.Cell cell(Reading reading, Measurand measurand, double minus) {
        return reading.fold(
                seen -> new Note.Cell(Wording.value(seen.value() - minus, measurand), plusMinus(seen)),
                why -> new Note.Cell(NONE, Wording.spelledOut(why.reason().word())));
    }

    private static Note.Cell difference(Deviation deviation, Line line) {
        if (line.difference().filter(deviation.readings()::has).isEmpty()) {
            return Note.Cell.EMPTY;
        }
        DeviationQuantity quantity = line.difference().get();
        return deviation
                .readings()
                .of(quantity)
                .fold(
                        seen -> new Note.Cell(
                                Wording.signed(seen.value(), quantity) + (seen.exceedsUncertainty() ? " *" : ""),
                                plusMinus(seen)
                                        + (seen.exceedsUncertainty()
                                                ? ", " + DifferenceWords.direction(quantity, seen.value())
                                                : "")),
                        why -> new Note.Cell(
                                NONE, Wording.spelledOut(why.reason().word())));
    }

    private static String plusMinus(Reading.Seen seen) {
        return seen.standardUncertainty() == 0
                ? "as decided"
                : "\u00b1 " + Wording.number(seen.expandedUncertainty(), 1);
    }

    /**
     * A line of the table: which measurand stands in which column.
     *
     * @param fromEdge the observation counts from the probe's midpoint, the line from its edge
     */
    private record Line(
            String name,
            Optional<PlanQuantity> plan,
            Optional<ObservationQuantity> observed,
            Optional<DeviationQuantity> difference,
            boolean fromEdge) {
        static final List<Line> IN_PLANE_PLAN = List.of(
                of("Angle to skin", PlanQuantity.ANGLE_TO_SKIN),
                of("Entry from probe's edge", PlanQuantity.ENTRY_FROM_PROBE_EDGE),
                of("Entry from probe's midpoint", PlanQuantity.ENTRY_DISTANCE),
                of("Target depth", PlanQuantity.TARGET_DEPTH),
                of("Path, entry to target", PlanQuantity.PATH),
                of("Lead-in before the beam", PlanQuantity.LEAD_IN),
                of("First seen at depth", PlanQuantity.FIRST_SEEN_DEPTH),
                of("Needle left outside", PlanQuantity.NEEDLE_LEFT),
                of("Nearest marked hazard", PlanQuantity.LEAST_CLEARANCE));
        static final List<Line> OUT_OF_PLANE_PLAN = List.of(
                of("Puncture from the beam", PlanQuantity.PUNCTURE_DISTANCE),
                of("Puncture from probe's edge", PlanQuantity.PUNCTURE_FROM_PROBE_EDGE),
                of("Angle to skin", PlanQuantity.ANGLE_TO_SKIN),
                of("Target depth", PlanQuantity.TARGET_DEPTH),
                of("Path, puncture to target", PlanQuantity.PATH),
                of("Target along the probe", PlanQuantity.ALONG_PROBE),
                of("Shortest needle", PlanQuantity.SHORTEST_NEEDLE));
        static final List<Line> IN_PLANE = List.of(
                of(
                        "Angle to skin",
                        PlanQuantity.ANGLE_TO_SKIN,
                        ObservationQuantity.ANGLE_TO_SKIN,
                        DeviationQuantity.ANGLE_TO_SKIN),
                new Line(
                        "Entry from probe's edge",
                        Optional.of(PlanQuantity.ENTRY_FROM_PROBE_EDGE),
                        Optional.of(ObservationQuantity.ENTRY_DISTANCE),
                        Optional.of(DeviationQuantity.ENTRY_DISTANCE),
                        true),
                of(
                        "Depth of target and tip",
                        PlanQuantity.TARGET_DEPTH,
                        ObservationQuantity.TIP_DEPTH,
                        DeviationQuantity.TIP_DEPTH),
                new Line(
                        "Deepest seen",
                        Optional.empty(),
                        Optional.of(ObservationQuantity.DEEPEST_SEEN_DEPTH),
                        Optional.empty(),
                        false),
                of("Path", PlanQuantity.PATH, ObservationQuantity.PATH, DeviationQuantity.PATH),
                new Line(
                        "Tip along the plan",
                        Optional.empty(),
                        Optional.empty(),
                        Optional.of(DeviationQuantity.ALONG_PLAN),
                        false),
                new Line(
                        "Tip across the plan",
                        Optional.empty(),
                        Optional.empty(),
                        Optional.of(DeviationQuantity.ACROSS_PLAN),
                        false));
        static final List<Line> OUT_OF_PLANE = List.of(
                of(
                        "Puncture from the beam",
                        PlanQuantity.PUNCTURE_DISTANCE,
                        ObservationQuantity.PUNCTURE_DISTANCE,
                        DeviationQuantity.PUNCTURE_DISTANCE),
                of(
                        "Crossing depth",
                        PlanQuantity.TARGET_DEPTH,
                        ObservationQuantity.CROSSING_DEPTH,
                        DeviationQuantity.CROSSING_DEPTH),
                of(
                        "Angle to skin",
                        PlanQuantity.ANGLE_TO_SKIN,
                        ObservationQuantity.ANGLE_TO_SKIN,
                        DeviationQuantity.ANGLE_TO_SKIN),
                of("Path", PlanQuantity.PATH, ObservationQuantity.PATH, DeviationQuantity.PATH));

        private static Line of(String name, PlanQuantity plan) {
            return new Line(name, Optional.of(plan), Optional.empty(), Optional.empty(), false);
        }

        private static Line of(
                String name, PlanQuantity plan, ObservationQuantity observed, DeviationQuantity difference) {
            return new Line(name, Optional.of(plan), Optional.of(observed), Optional.of(difference), false);
        }
    }
}
