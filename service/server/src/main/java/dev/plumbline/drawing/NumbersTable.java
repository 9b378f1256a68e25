// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import dev.plumbline.deviation.Deviation;
import dev.plumbline.deviation.DeviationQuantity;
import dev.plumbline.geometry.Measurand;
import dev.plumbline.geometry.Reading;
import dev.plumbline.geometry.Readings;
import dev.plumbline.geometry.Reason;
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
    private static final String STATED = "as stated";
    private static final String NONE = "\u2013";

    private NumbersTable() {}

    static Note.Table ofPlan(Plan plan) {
        List<Note.Row> rows = new ArrayList<>();
        for (NumbersLine line :
                plan instanceof InPlanePlan ? NumbersLine.IN_PLANE_PLAN : NumbersLine.OUT_OF_PLANE_PLAN) {
            if (line.plan().filter(quantity -> says(plan, quantity)).isPresent()) {
                rows.add(new Note.Row(line.name(), List.of(planned(plan, line, true))));
            }
        }
        return new Note.Table(List.of("plan"), rows);
    }

    /** A line without any number is left out; the record has its reason. */
    private static boolean isNumber(Note.Cell cell) {
        return !cell.value().isEmpty() && !cell.value().equals(NONE);
    }

    /** There is a path, so its angle has a value. */
    static boolean givesAngle(Plan plan) {
        return value(plan.readings(), PlanQuantity.ANGLE_TO_SKIN).isPresent();
    }

    /** Where no path fits, one sentence says so; the table does not repeat it for every line. */
    private static boolean says(Plan plan, PlanQuantity quantity) {
        return plan.readings().has(quantity)
                && !plan.readings().of(quantity).equals(Reading.notSeen(Reason.INFEASIBLE));
    }

    static Note.Table compared(Plan plan, Observation observation, Deviation deviation) {
        List<Note.Row> rows = new ArrayList<>();
        for (NumbersLine line : plan instanceof InPlanePlan ? NumbersLine.IN_PLANE : NumbersLine.OUT_OF_PLANE) {
            List<Note.Cell> cells =
                    List.of(planned(plan, line, false), observed(plan, observation, line), difference(deviation, line));
            if (cells.stream().anyMatch(NumbersTable::isNumber) && !saidByTip(line, observation)) {
                rows.add(new Note.Row(line.nameWithUnit(), cells));
            }
        }
        return new Note.Table(List.of("plan", "observed", "deviation"), rows);
    }

    /** The deepest seen part needs no line of its own where it is the confirmed tip. */
    private static boolean saidByTip(NumbersLine line, Observation observation) {
        return line.observed()
                        .filter(ObservationQuantity.DEEPEST_SEEN_DEPTH::equals)
                        .isPresent()
                && observation.readings().has(ObservationQuantity.TIP_DEPTH)
                && observation.readings().of(ObservationQuantity.TIP_DEPTH) instanceof Reading.Seen;
    }

    private static Note.Cell planned(Plan plan, NumbersLine line, boolean unit) {
        return line.plan()
                .filter(plan.readings()::has)
                .map(quantity -> decided(plan, cell(plan.readings().of(quantity), quantity, unit)))
                .orElse(Note.Cell.EMPTY);
    }

    /** What a person chose is exact; saying so tells it from what was measured. */
    private static Note.Cell decided(Plan plan, Note.Cell cell) {
        return cell.small().equals(STATED)
                ? new Note.Cell(cell.value(), plan.source() == Plan.Source.STATED ? STATED : "as proposed")
                : cell;
    }

    private static Note.Cell observed(Plan plan, Observation observation, NumbersLine line) {
        if (line.observed().filter(observation.readings()::has).isEmpty()) {
            return Note.Cell.EMPTY;
        }
        ObservationQuantity quantity = line.observed().get();
        double offset = line.fromEdge() ? edge(plan.readings()) : 0;
        Reading reading = observation.readings().of(quantity);
        return cell(
                reading.fold(seen -> new Reading.Seen(seen.value() - offset, seen.standardUncertainty()), why -> why),
                quantity,
                false);
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

    private static Note.Cell cell(Reading reading, Measurand measurand, boolean unit) {
        return reading.fold(
                seen -> new Note.Cell(
                        unit ? Wording.value(seen.value(), measurand) : Wording.bare(seen.value(), measurand),
                        plusMinus(seen)),
                NumbersTable::noValue);
    }

    private static Note.Cell difference(Deviation deviation, NumbersLine line) {
        return line.difference()
                .filter(deviation.readings()::has)
                .map(quantity -> deviation
                        .readings()
                        .of(quantity)
                        .fold(seen -> difference(quantity, seen), NumbersTable::noValue))
                .orElse(Note.Cell.EMPTY);
    }

    private static Note.Cell difference(DeviationQuantity quantity, Reading.Seen seen) {
        String value = Wording.signed(seen.value(), quantity);
        if (!seen.exceedsUncertainty()) {
            return new Note.Cell(value, plusMinus(seen));
        }
        String direction = DifferenceWords.direction(quantity, seen.value());
        return new Note.Cell(
                value + " *", seen.standardUncertainty() == 0 ? direction : plusMinus(seen) + ", " + direction);
    }

    private static Note.Cell noValue(Reading.NotSeen why) {
        return new Note.Cell(NONE, Wording.spelledOut(why.reason().word()));
    }

    /** What a person stated carries no uncertainty. */
    private static String plusMinus(Reading.Seen seen) {
        return seen.standardUncertainty() == 0 ? STATED : "\u00b1 " + Wording.number(seen.expandedUncertainty(), 1);
    }
}
