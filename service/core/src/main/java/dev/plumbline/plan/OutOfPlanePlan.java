// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Reading;
import dev.plumbline.geometry.Readings;
import java.util.List;

/**
 * A plan whose needle crosses the image plane at the target.
 *
 * @param steep the steep row was taken
 * @param target on the planned frame
 * @param rows the row at the usual angle, then the steep row
 * @param stepDown crossing depths on the way down
 */
public record OutOfPlanePlan(
        Source source,
        boolean feasible,
        boolean steep,
        Readings<PlanQuantity> readings,
        PointPx target,
        Judgement judgement,
        List<PlanRow> rows,
        List<Step> stepDown,
        List<WayOut> waysOut,
        String text)
        implements Plan {
    public OutOfPlanePlan {
        rows = List.copyOf(rows);
        stepDown = List.copyOf(stepDown);
        waysOut = List.copyOf(waysOut);
    }

    /**
     * With this angle from the same puncture the needle crosses the plane at this depth. Depths on the way are chosen and so
     * exact, and so is the puncture unless only the angle was; the last step is the measured target.
     */
    public record Step(Reading.Seen angleToSkinDeg, Reading.Seen crossingDepthMm) {}
}
