// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.CaseInputs;
import dev.plumbline.geometry.Gradient;
import dev.plumbline.geometry.Orientation;
import dev.plumbline.geometry.Quantities;
import dev.plumbline.geometry.Readings;
import dev.plumbline.plan.Limit.Kind;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The nearest change that would make an in-plane plan fit its limits, one of each kind that there is. */
final class WaysOut {
    /** No longer needle is offered: the longest of the catalogue that is shipped (design choice). */
    static final double LONGEST_NEEDLE_MM = 150;

    /**
     * A longer needle is not offered for the sake of a path flatter than this: it would run under the skin for most of its
     * length (design choice).
     */
    private static final double FLATTEST_OFFERED_DEG = 15;

    private final InPlaneScene<Gradient> nominal;
    private final InPlaneScene<Gradient> scene;
    private final Orientation orientation;
    private final CaseInputs<Gradient> inputs;

    WaysOut(
            InPlaneScene<Gradient> nominal,
            InPlaneScene<Gradient> scene,
            Orientation orientation,
            CaseInputs<Gradient> inputs) {
        this.nominal = nominal;
        this.scene = scene;
        this.orientation = orientation;
        this.inputs = inputs;
    }

    /** @param stated the entry of the path that does not fit, where a person stated one */
    List<WayOut> of(EntryLimits limits, List<Limit> binding, OptionalDouble stated) {
        List<WayOut> ways = new ArrayList<>();
        if (binding.contains(Limit.of(Kind.REACH))) {
            longerNeedle(limits, stated).ifPresent(ways::add);
        }
        if (stated.isPresent()) {
            steeper(limits, stated.getAsDouble()).ifPresent(ways::add);
            shallower(limits, stated.getAsDouble()).ifPresent(ways::add);
        }
        if (binding.contains(Limit.of(Kind.FOOTPRINT))) {
            atProbeEdge(stated).ifPresent(ways::add);
        }
        otherEnd().ifPresent(ways::add);
        outOfPlane().ifPresent(ways::add);
        return ways;
    }

    private Optional<WayOut> longerNeedle(EntryLimits limits, OptionalDouble stated) {
        Intervals offered = new EntryLimits(nominal.with(nominal.input().withNeedleLength(LONGEST_NEEDLE_MM)))
                .feasible()
                .and(limits.inBand(new Constraints.Band(FLATTEST_OFFERED_DEG, Angles.STEEPEST_DEG)));
        OptionalDouble entry = keepOrChoose(offered, stated, limits);
        if (entry.isEmpty()) {
            return Optional.empty();
        }
        Quantities<PlanQuantity, Gradient> row = row(scene, entry.getAsDouble());
        double length = row.number(PlanQuantity.SHORTEST_NEEDLE).orElseThrow().getReal();
        return Optional.of(way(
                WayOut.Kind.LONGER_NEEDLE,
                row,
                "A needle of at least " + (long) Math.ceil(length) + " mm, " + place(row) + "."));
    }

    /** The stated entry where it fits, else the one that the shortest needle reaches. */
    private OptionalDouble keepOrChoose(Intervals entries, OptionalDouble stated, EntryLimits limits) {
        if (stated.isPresent() && entries.holds(stated.getAsDouble())) {
            return stated;
        }
        Constraints.Limits set = scene.limits();
        Intervals inBand = entries.and(limits.inBand(set.angleBand()));
        if (!inBand.isEmpty()) {
            return OptionalDouble.of(inBand.least());
        }
        return EntryChoice.among(entries, limits, set).proposed();
    }

    private Optional<WayOut> steeper(EntryLimits limits, double stated) {
        OptionalDouble entry = limits.feasible().lastUpTo(stated);
        if (entry.isEmpty()) {
            return Optional.empty();
        }
        Quantities<PlanQuantity, Gradient> plan =
                InPlaneQuantities.plan(InPlanePath.atEntry(scene, entry.getAsDouble()));
        Optional<Gradient> heelIn = plan.number(PlanQuantity.HEEL_IN);
        if (heelIn.isEmpty()) {
            return Optional.empty();
        }
        Quantities<PlanQuantity, Gradient> row = row(scene, entry.getAsDouble());
        row.put(PlanQuantity.HEEL_IN, heelIn.get());
        long heel = Math.round(Math.toDegrees(heelIn.get().getReal()));
        String after = heel == 0 ? "." : ", heeling in about " + heel + "\u00b0, then mark again.";
        return Optional.of(way(WayOut.Kind.STEEPER_WITH_HEEL_IN, row, "Steeper, " + place(row) + after));
    }

    private Optional<WayOut> shallower(EntryLimits limits, double stated) {
        OptionalDouble entry = limits.feasible().nextFrom(stated);
        if (entry.isEmpty()) {
            return Optional.empty();
        }
        Quantities<PlanQuantity, Gradient> row = row(scene, entry.getAsDouble());
        return Optional.of(way(WayOut.Kind.SHALLOWER, row, "Shallower, " + place(row) + "."));
    }

    private Optional<WayOut> atProbeEdge(OptionalDouble stated) {
        if (scene.limits().footprintClearanceMm() == 0) {
            return Optional.empty();
        }
        PlanInput lifted =
                nominal.input().withConstraints(nominal.input().constraints().withEntryAtProbeEdge());
        EntryLimits limits = new EntryLimits(nominal.with(lifted));
        OptionalDouble entry = keepOrChoose(limits.feasible(), stated, limits);
        if (entry.isEmpty()) {
            return Optional.empty();
        }
        Quantities<PlanQuantity, Gradient> row = row(scene, entry.getAsDouble());
        return Optional.of(way(
                WayOut.Kind.ENTRY_AT_PROBE_EDGE,
                row,
                "Lift the probe's edge for the puncture, " + place(row) + ", then put it back."));
    }

    private Optional<WayOut> otherEnd() {
        if (!scene.midpointKnown()) {
            return Optional.empty();
        }
        InPlaneScene<Gradient> mirrored = nominal.from(orientation.otherSide());
        if (!mirrored.targetInTissue()) {
            return Optional.empty();
        }
        EntryLimits limits = new EntryLimits(mirrored);
        OptionalDouble entry =
                EntryChoice.among(limits.feasible(), limits, scene.limits()).proposed();
        if (entry.isEmpty()) {
            return Optional.empty();
        }
        InPlaneScene<Gradient> other = scene.from(orientation.otherSide());
        Quantities<PlanQuantity, Gradient> row = row(other, entry.getAsDouble());
        return Optional.of(
                way(WayOut.Kind.FROM_PROBES_OTHER_END, row, "From the probe's other end, " + place(row) + "."));
    }

    private Optional<WayOut> outOfPlane() {
        OutOfPlaneRows<Gradient> rows =
                new OutOfPlaneRows<>(scene.input(), scene.target().y());
        return rows.proposed().map(path -> {
            Quantities<PlanQuantity, Gradient> row = rows.row(path);
            return way(
                    WayOut.Kind.OUT_OF_PLANE,
                    row,
                    "Out-of-plane, puncture " + Words.mm(path.distance().getReal()) + " from the beam, about "
                            + Words.degrees(Math.toDegrees(path.angle().getReal())) + ".");
        });
    }

    private static Quantities<PlanQuantity, Gradient> row(InPlaneScene<Gradient> scene, double entry) {
        return InPlaneQuantities.row(InPlanePath.atEntry(scene, entry));
    }

    private WayOut way(WayOut.Kind kind, Quantities<PlanQuantity, Gradient> row, String text) {
        Readings<PlanQuantity> readings = row.readings(inputs.numbers());
        return new WayOut(kind, readings, text);
    }

    private static String place(Quantities<PlanQuantity, Gradient> row) {
        String angle = "about "
                + Words.degrees(Math.toDegrees(
                        row.number(PlanQuantity.ANGLE_TO_SKIN).orElseThrow().getReal()));
        return row.number(PlanQuantity.ENTRY_DISTANCE)
                .map(entry -> "entry " + Words.mm(entry.getReal()) + " from the probe's middle, " + angle)
                .orElse(angle);
    }
}
