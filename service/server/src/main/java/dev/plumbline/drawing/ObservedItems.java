// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import dev.plumbline.deviation.Deviation;
import dev.plumbline.deviation.DeviationQuantity;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Reading;
import dev.plumbline.observation.Observation;
import dev.plumbline.observation.ObservationMarks;
import dev.plumbline.observation.ObservationQuantity;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** The shaft as marked, its line up to the skin, its end, and how they differ from the plan. */
final class ObservedItems {
    private final ObservationMarks marks;
    private final Observation observation;
    private final Deviation deviation;
    private final Optional<SkinAxis> axis;

    private final String name;

    /**
     * Where it stands.
     *
     * @param name put before its labels; empty where it is alone on the frame
     */
    record Place(Optional<SkinAxis> axis, String name) {}

    ObservedItems(ObservationMarks marks, Observation observation, Deviation deviation, Place place) {
        this.marks = marks;
        this.observation = observation;
        this.deviation = deviation;
        this.axis = place.axis();
        this.name = place.name();
    }

    List<Item> inPlane(Optional<Observation.CarriedPlan> carried) {
        List<Item> items = new ArrayList<>();
        if (!marks.shaft().isEmpty()) {
            items.addAll(shaft());
        }
        items.addAll(end());
        carried.ifPresent(plan -> items.addAll(differences(plan)));
        return items;
    }

    /** Out-of-plane: the dot where some part of the needle crosses the image. */
    List<Item> crossing(Optional<Observation.CarriedPlan> carried) {
        List<Item> items = new ArrayList<>();
        marks.tip().ifPresent(dot -> {
            items.add(new Item.Spot(Role.CROSSING, dot));
            items.add(Item.Label.at(Role.CROSSING, crossingLines(), dot));
            carried.ifPresent(plan -> items.add(Item.Run.line(Role.DIFFERENCE, plan.target(), dot)));
        });
        return items;
    }

    private List<String> crossingLines() {
        boolean isTip = marks.tipIsTip().orElse(false);
        String what = isTip ? "tip" : "needle crosses here";
        List<String> lines = new ArrayList<>();
        lines.add(value(ObservationQuantity.CROSSING_DEPTH)
                .map(depth -> name + what + ", " + depth + " deep")
                .orElse(name + what));
        if (!isTip) {
            lines.add("may be shaft");
        }
        difference(DeviationQuantity.CROSSING_DEPTH).ifPresent(lines::add);
        return lines;
    }

    private List<Item> shaft() {
        List<PointPx> byDepth = marks.shaft().stream().sorted(byDepth()).toList();
        PointPx first = onLine(byDepth.get(0));
        PointPx last = onLine(byDepth.get(byDepth.size() - 1));
        List<Item> items = new ArrayList<>();
        observation.entry().ifPresent(entry -> {
            items.add(Item.Run.line(Role.OBSERVED_LINE, entry, first));
            axis.ifPresent(
                    skin -> items.add(new Item.Angle(Role.OBSERVED_ANGLE, entry, alongSkin(skin, entry, last), last)));
            items.add(new Item.Spot(Role.OBSERVED_ENTRY, entry));
        });
        items.add(Item.Run.line(Role.OBSERVED_SHAFT, first, last));
        marks.shaft().forEach(mark -> items.add(new Item.Spot(Role.SHAFT_MARK, mark)));
        items.add(Item.Label.at(
                Role.OBSERVED_ANGLE, angleLines(), observation.entry().orElse(first)));
        return items;
    }

    private Comparator<PointPx> byDepth() {
        return Comparator.comparingDouble(
                point -> axis.map(skin -> skin.w(point)).orElse(point.row()));
    }

    private static PointPx alongSkin(SkinAxis skin, PointPx entry, PointPx last) {
        double u = skin.u(entry);
        return skin.at(u < skin.u(last) ? u + 1 : u - 1, skin.w(entry));
    }

    /** Foot of a mark on the fitted line, which runs through the entry and the middle of the marks. */
    private PointPx onLine(PointPx mark) {
        if (observation.entry().isEmpty() || axis.isEmpty()) {
            return mark;
        }
        SkinAxis skin = axis.get();
        double u = skin.u(observation.entry().get());
        double w = skin.w(observation.entry().get());
        double du = marks.shaft().stream().mapToDouble(skin::u).average().orElseThrow() - u;
        double dw = marks.shaft().stream().mapToDouble(skin::w).average().orElseThrow() - w;
        double square = du * du + dw * dw;
        if (square == 0) {
            return mark;
        }
        double share = ((skin.u(mark) - u) * du + (skin.w(mark) - w) * dw) / square;
        return skin.at(u + share * du, w + share * dw);
    }

    private List<String> angleLines() {
        List<String> lines = new ArrayList<>();
        lines.add(value(ObservationQuantity.ANGLE_TO_SKIN)
                .map(angle -> name + (name.isEmpty() ? "Observed " : "observed ") + angle)
                .orElse(name + (name.isEmpty() ? "Observed" : "observed")));
        difference(DeviationQuantity.ANGLE_TO_SKIN).ifPresent(lines::add);
        return lines;
    }

    private List<Item> end() {
        Optional<PointPx> end = marks.tip().or(() -> marks.shaft().stream().max(byDepth()));
        boolean isTip = marks.tip().isPresent() && marks.tipIsTip().orElse(false);
        Role role = isTip ? Role.TIP : Role.SEEN_END;
        String what = name + (isTip ? "tip" : "deepest seen, may be shaft");
        ObservationQuantity depth = isTip ? ObservationQuantity.TIP_DEPTH : ObservationQuantity.DEEPEST_SEEN_DEPTH;
        List<String> lines = value(depth)
                .map(mm -> isTip ? List.of(what + ", " + mm + " deep") : List.of(what, mm + " deep"))
                .orElse(List.of(what));
        return end.stream()
                .flatMap(at -> Stream.<Item>of(new Item.Spot(role, at), Item.Label.at(role, lines, at)))
                .toList();
    }

    private List<Item> differences(Observation.CarriedPlan plan) {
        List<Item> items = new ArrayList<>();
        if (marks.tip().isPresent() && marks.tipIsTip().orElse(false)) {
            items.add(Item.Run.line(Role.DIFFERENCE, plan.target(), marks.tip().get()));
        }
        observation.entry().ifPresent(entry -> items.add(Item.Run.line(Role.DIFFERENCE, plan.entry(), entry)));
        return items;
    }

    private Optional<String> value(ObservationQuantity quantity) {
        return observation.readings().has(quantity)
                ? Wording.value(observation.readings().of(quantity), quantity)
                : Optional.empty();
    }

    /** Such as "4.5 degrees steeper than the plan"; nothing where the difference has no value. */
    private Optional<String> difference(DeviationQuantity quantity) {
        if (!deviation.readings().has(quantity)) {
            return Optional.empty();
        }
        Reading reading = deviation.readings().of(quantity);
        return reading.fold(seen -> Optional.of(DifferenceWords.than(quantity, seen)), why -> Optional.<String>empty());
    }
}
