// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Reading;
import dev.plumbline.geometry.Reason;
import dev.plumbline.plan.InPlanePlan;
import dev.plumbline.plan.Plan;
import dev.plumbline.plan.PlanQuantity;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The planned or proposed path of an in-plane plan, on the planned frame or carried to another one. */
final class PathItems {
    /** More are named beside the picture. */
    private static final int LIMITS_ON_PICTURE = 3;

    private PathItems() {}

    /** On the planned frame, with all its labels. */
    static List<Item> labelled(InPlanePlan plan, InPlanePlan.Line line, SkinAxis axis) {
        List<Item> items = new ArrayList<>(path(plan, line, axis));
        items.add(Item.Label.at(Role.ENTRY, List.of(entryWords(plan)), line.entry()));
        line.firstSeen()
                .filter(at -> !at.equals(line.entry()))
                .ifPresent(at -> text(plan, PlanQuantity.FIRST_SEEN_DEPTH)
                        .ifPresent(depth -> items.add(
                                Item.Label.at(Role.FIRST_SEEN, List.of("should appear here", depth + " deep"), at))));
        return items;
    }

    /** Entry, path with its lead-in, where it should first appear, and the angle. */
    static List<Item> path(InPlanePlan plan, InPlanePlan.Line line, SkinAxis axis) {
        boolean proposed = plan.source() == Plan.Source.PROPOSED;
        Role inBeam = proposed ? Role.PROPOSED_PATH : Role.PLAN_PATH;
        Role leadIn = proposed ? Role.PROPOSED_LEAD_IN : Role.PLAN_LEAD_IN;
        List<Item> items = new ArrayList<>();
        PointPx shownFrom = line.firstSeen().orElse(neverShown(plan) ? line.target() : line.entry());
        if (!shownFrom.equals(line.entry())) {
            items.add(Item.Run.line(leadIn, line.entry(), shownFrom));
        }
        if (!shownFrom.equals(line.target())) {
            items.add(Item.Run.line(inBeam, shownFrom, line.target()));
        }
        items.add(new Item.Angle(Role.PLAN_ANGLE, line.entry(), alongSkin(line, axis), line.target()));
        items.add(Item.Label.at(Role.PLAN_ANGLE, angleLines(plan), line.entry()));
        items.add(new Item.Spot(Role.ENTRY, line.entry()));
        line.firstSeen()
                .filter(at -> !at.equals(line.entry()))
                .ifPresent(at -> items.add(new Item.Spot(Role.FIRST_SEEN, at)));
        return items;
    }

    private static boolean neverShown(InPlanePlan plan) {
        return plan.readings().has(PlanQuantity.FIRST_SEEN_DEPTH)
                && plan.readings()
                        .of(PlanQuantity.FIRST_SEEN_DEPTH)
                        .equals(Reading.notSeen(Reason.NO_SHAFT_UNDER_FACE));
    }

    /** A point on the skin line from the entry towards the side of the target. */
    private static PointPx alongSkin(InPlanePlan.Line line, SkinAxis axis) {
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
            lines.add("outside the limits:");
            lines.addAll(plan.judgement().binding().stream()
                    .map(Wording::limit)
                    .limit(LIMITS_ON_PICTURE)
                    .toList());
        }
        return lines;
    }

    /** Short, because the ruler above it says what it counts from. */
    private static String entryWords(InPlanePlan plan) {
        return text(plan, PlanQuantity.ENTRY_FROM_PROBE_EDGE)
                .or(() -> text(plan, PlanQuantity.ENTRY_DISTANCE))
                .or(() -> text(plan, PlanQuantity.ENTRY_FROM_TARGET_COLUMN))
                .map(distance -> "entry, " + distance)
                .orElse("entry");
    }

    static Optional<String> text(Plan plan, PlanQuantity quantity) {
        return plan.readings().has(quantity) ? Wording.value(plan.readings().of(quantity), quantity) : Optional.empty();
    }

    /** The entries that fit the limits, as areas from the skin to the target. */
    static List<Item> fan(InPlanePlan plan, PointPx target, FrameView view) {
        List<Item> items = new ArrayList<>();
        view.axis().filter(axis -> view.midpointKnown()).ifPresent(axis -> {
            for (InPlanePlan.Interval interval : plan.choices().feasibleEntries()) {
                List<PointPx> area = new ArrayList<>(axis.skin(interval.low(), interval.high()));
                area.add(0, target);
                items.add(new Item.Run(Role.FAN, area, true));
            }
        });
        return items;
    }
}
