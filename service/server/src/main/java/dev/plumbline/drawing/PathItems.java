// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import dev.plumbline.geometry.PointPx;
import dev.plumbline.plan.InPlanePlan;
import dev.plumbline.plan.Plan;
import dev.plumbline.plan.PlanQuantity;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The planned or proposed path of an in-plane plan, on the planned frame or carried to another one. */
final class PathItems {
    private PathItems() {}

    static List<Item> onPlannedFrame(InPlanePlan plan, FrameView view) {
        return plan.line().map(line -> path(plan, line, view)).orElse(List.of());
    }

    /** Entry, path with its lead-in, where it should first appear, and the angle. */
    static List<Item> path(InPlanePlan plan, InPlanePlan.Line line, FrameView view) {
        boolean proposed = plan.source() == Plan.Source.PROPOSED;
        Role inBeam = proposed ? Role.PROPOSED_PATH : Role.PLAN_PATH;
        Role leadIn = proposed ? Role.PROPOSED_LEAD_IN : Role.PLAN_LEAD_IN;
        List<Item> items = new ArrayList<>();
        PointPx seen = line.firstSeen().orElse(line.entry());
        if (seen.distanceTo(line.entry()) > 0) {
            items.add(Item.Run.line(leadIn, line.entry(), seen));
        }
        items.add(Item.Run.line(inBeam, seen, line.target()));
        items.add(new Item.Angle(Role.PLAN_ANGLE, line.entry(), alongSkin(line, view), line.target()));
        items.add(new Item.Spot(Role.ENTRY, line.entry()));
        line.firstSeen()
                .filter(at -> !at.equals(line.entry()))
                .ifPresent(at -> items.add(new Item.Spot(Role.FIRST_SEEN, at)));
        items.add(Item.Label.at(Role.PLAN_ANGLE, angleLines(plan), line.entry()));
        entryLine(plan).ifPresent(text -> items.add(Item.Label.at(Role.ENTRY, List.of(text), line.entry())));
        line.firstSeen()
                .ifPresent(at -> firstSeenLine(plan)
                        .ifPresent(text -> items.add(Item.Label.at(Role.FIRST_SEEN, List.of(text), at))));
        return items;
    }

    /** A point on the skin line from the entry towards the side of the target. */
    static PointPx alongSkin(InPlanePlan.Line line, FrameView view) {
        SkinAxis axis = view.axis();
        double entry = axis.u(line.entry());
        double run = entry - axis.u(line.target());
        return axis.at(run >= 0 ? entry - 1 : entry + 1, axis.w(line.entry()));
    }

    private static List<String> angleLines(InPlanePlan plan) {
        List<String> lines = new ArrayList<>();
        lines.add(Wording.value(plan.readings().of(PlanQuantity.ANGLE_TO_SKIN), PlanQuantity.ANGLE_TO_SKIN)
                .map(angle -> "Plan " + angle)
                .orElse("Plan"));
        if (plan.source() == Plan.Source.PROPOSED) {
            lines.add("proposed, not confirmed");
        }
        if (!plan.judgement().binding().isEmpty()) {
            lines.add("outside the limits");
        }
        return lines;
    }

    private static Optional<String> entryLine(InPlanePlan plan) {
        return text(plan, PlanQuantity.ENTRY_FROM_PROBE_EDGE)
                .map(distance -> "entry, " + distance + " from the probe's edge")
                .or(() -> text(plan, PlanQuantity.ENTRY_DISTANCE)
                        .map(distance -> "entry, " + distance + " from the probe's midpoint"))
                .or(() -> Optional.of("entry"));
    }

    private static Optional<String> firstSeenLine(InPlanePlan plan) {
        return text(plan, PlanQuantity.FIRST_SEEN_DEPTH).map(depth -> "should appear here, " + depth + " deep");
    }

    static Optional<String> text(Plan plan, PlanQuantity quantity) {
        return plan.readings().has(quantity) ? Wording.value(plan.readings().of(quantity), quantity) : Optional.empty();
    }

    /** The entries that fit the limits, as areas from the skin to the target. */
    static List<Item> fan(InPlanePlan plan, FrameView view) {
        List<Item> items = new ArrayList<>();
        if (!view.midpointKnown() || plan.line().isEmpty()) {
            return items;
        }
        PointPx target = plan.line().get().target();
        for (InPlanePlan.Interval interval : plan.choices().feasibleEntries()) {
            PointPx low = view.axis().skin(interval.low());
            PointPx high = view.axis().skin(interval.high());
            items.add(new Item.Run(Role.FAN, List.of(target, low, high), true));
        }
        return items;
    }
}
