// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import dev.plumbline.deviation.DeviationQuantity;
import dev.plumbline.geometry.Measurand;
import dev.plumbline.geometry.Unit;
import dev.plumbline.observation.ObservationQuantity;
import dev.plumbline.plan.PlanQuantity;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * One line of the table of numbers: which measurand stands in which column.
 *
 * @param fromEdge the observation counts from the probe's midpoint, the line from its edge
 */
record NumbersLine(
        String name,
        Optional<PlanQuantity> plan,
        Optional<ObservationQuantity> observed,
        Optional<DeviationQuantity> difference,
        boolean fromEdge) {
    static final List<NumbersLine> IN_PLANE_PLAN = List.of(
            of("Angle to skin", PlanQuantity.ANGLE_TO_SKIN),
            of("Entry from probe's edge", PlanQuantity.ENTRY_FROM_PROBE_EDGE),
            of("Entry from probe's midpoint", PlanQuantity.ENTRY_DISTANCE),
            of("Target depth", PlanQuantity.TARGET_DEPTH),
            of("Path, entry to target", PlanQuantity.PATH),
            of("Lead-in before the beam", PlanQuantity.LEAD_IN),
            of("First seen at depth", PlanQuantity.FIRST_SEEN_DEPTH),
            of("Needle left outside", PlanQuantity.NEEDLE_LEFT),
            of("Nearest marked hazard", PlanQuantity.LEAST_CLEARANCE));
    static final List<NumbersLine> OUT_OF_PLANE_PLAN = List.of(
            of("Puncture from the beam", PlanQuantity.PUNCTURE_DISTANCE),
            of("Puncture from probe's edge", PlanQuantity.PUNCTURE_FROM_PROBE_EDGE),
            of("Angle to skin", PlanQuantity.ANGLE_TO_SKIN),
            of("Target depth", PlanQuantity.TARGET_DEPTH),
            of("Path, puncture to target", PlanQuantity.PATH),
            of("Shortest needle", PlanQuantity.SHORTEST_NEEDLE));
    static final List<NumbersLine> IN_PLANE = List.of(
            of(
                    "Angle to skin",
                    PlanQuantity.ANGLE_TO_SKIN,
                    ObservationQuantity.ANGLE_TO_SKIN,
                    DeviationQuantity.ANGLE_TO_SKIN),
            new NumbersLine(
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
            new NumbersLine(
                    "Deepest seen",
                    Optional.empty(),
                    Optional.of(ObservationQuantity.DEEPEST_SEEN_DEPTH),
                    Optional.empty(),
                    false),
            of("Path", PlanQuantity.PATH, ObservationQuantity.PATH, DeviationQuantity.PATH),
            new NumbersLine(
                    "Tip along plan",
                    Optional.empty(),
                    Optional.empty(),
                    Optional.of(DeviationQuantity.ALONG_PLAN),
                    false),
            new NumbersLine(
                    "Tip across plan",
                    Optional.empty(),
                    Optional.empty(),
                    Optional.of(DeviationQuantity.ACROSS_PLAN),
                    false));
    static final List<NumbersLine> OUT_OF_PLANE = List.of(
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

    private static NumbersLine of(String name, PlanQuantity plan) {
        return new NumbersLine(name, Optional.of(plan), Optional.empty(), Optional.empty(), false);
    }

    private static NumbersLine of(
            String name, PlanQuantity plan, ObservationQuantity observed, DeviationQuantity difference) {
        return new NumbersLine(name, Optional.of(plan), Optional.of(observed), Optional.of(difference), false);
    }

    /** The name with the unit, for columns of bare numbers; degrees keep their sign. */
    String nameWithUnit() {
        boolean millimetres = Stream.of(plan, observed, difference)
                .flatMap(Optional::stream)
                .map(Measurand.class::cast)
                .anyMatch(measurand -> measurand.unit() == Unit.MILLIMETRE);
        return millimetres ? name + ", mm" : name;
    }
}
