// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Readings;
import java.util.List;
import java.util.Optional;

/**
 * A plan whose needle runs along the image plane.
 *
 * @param line where the path runs on the frame; empty when no path could be given
 * @param inBand the angle lies in the working band
 * @param clearances from hazards and nerves
 * @param choices the other paths there are
 */
public record InPlanePlan(
        Source source,
        boolean feasible,
        boolean inBand,
        Readings<PlanQuantity> readings,
        Optional<Line> line,
        Clearances clearances,
        Judgement judgement,
        Choices choices,
        List<WayOut> waysOut,
        String text)
        implements Plan {
    public InPlanePlan {
        waysOut = List.copyOf(waysOut);
    }

    /**
     * The path in pixels of the planned frame; the entry may lie outside the image.
     *
     * @param firstSeen where the beam can first show the needle; empty where nothing tells
     */
    public record Line(PointPx entry, PointPx target, Optional<PointPx> firstSeen) {}

    /** Clearances in the order the structures were marked. */
    public record Clearances(List<Clearance> hazards, List<Clearance> nerves) {
        public Clearances {
            hazards = List.copyOf(hazards);
            nerves = List.copyOf(nerves);
        }
    }

    /**
     * The other paths.
     *
     * @param feasibleEntries closed intervals of entry distances in mm, ascending
     * @param alternatives the table of angles
     */
    public record Choices(
            List<Interval> feasibleEntries,
            Optional<PlanRow> flattest,
            Optional<PlanRow> steepest,
            List<PlanRow> alternatives) {
        public Choices {
            feasibleEntries = List.copyOf(feasibleEntries);
            alternatives = List.copyOf(alternatives);
        }
    }

    /** A closed interval in millimetres, {@code low <= high}. */
    public record Interval(double low, double high) {}
}
