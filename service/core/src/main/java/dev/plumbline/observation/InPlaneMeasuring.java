// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.observation;

import static dev.plumbline.observation.ObservationQuantity.ANGLE_TO_SKIN;
import static dev.plumbline.observation.ObservationQuantity.BOW;
import static dev.plumbline.observation.ObservationQuantity.DEEPEST_SEEN_DEPTH;
import static dev.plumbline.observation.ObservationQuantity.ENTRY_DISTANCE;
import static dev.plumbline.observation.ObservationQuantity.ENTRY_EXTRAPOLATED;
import static dev.plumbline.observation.ObservationQuantity.PATH;
import static dev.plumbline.observation.ObservationQuantity.ROTATION_BOUND;
import static dev.plumbline.observation.ObservationQuantity.SEEN_LENGTH;
import static dev.plumbline.observation.ObservationQuantity.TIP_DEPTH;
import static dev.plumbline.observation.ObservationQuantity.TIP_TO_TARGET;

import dev.plumbline.geometry.PointMm;
import dev.plumbline.geometry.Probe;
import dev.plumbline.geometry.ProbeFrame;
import dev.plumbline.geometry.Quantities;
import dev.plumbline.geometry.Reason;
import dev.plumbline.geometry.SkinCourse;
import dev.plumbline.geometry.StraightLine;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.RealFieldElement;

/**
 * Measures a needle that lies in the image plane.
 *
 * <p>Shaft line through the marks; with its direction (du, dw) pointing into the tissue, {@code angle = atan2(dw, |du|)},
 * and the entry is where it meets the skin line. Source: elementary.
 */
final class InPlaneMeasuring<T extends RealFieldElement<T>> {
    /** A shaft flatter than this against the skin meets it nowhere that could be told (design choice: 1 degree). */
    private static final double PARALLEL = Math.toRadians(1);

    private final ObservedFrame<T> seen;
    private final Quantities<ObservationQuantity, T> quantities = new Quantities<>(ObservationQuantity.class);
    private Optional<PointMm<T>> entry = Optional.empty();
    private Optional<PointMm<T>> tipFromTarget = Optional.empty();
    private boolean fromOtherSide;

    InPlaneMeasuring(ObservedFrame<T> seen) {
        this.seen = seen;
    }

    ObservationDraft<T> measure() {
        Optional<StraightLine<T>> line =
                seen.shaft().isEmpty() ? Optional.empty() : Optional.of(StraightLine.through(seen.shaft()));
        line.ifPresentOrElse(this::extent, () -> put(Reason.NOT_MARKED, SEEN_LENGTH, BOW));
        seen.axes().ifPresentOrElse(axes -> againstSkin(axes, line), this::withoutSkin);
        tip();
        return new ObservationDraft<>(
                quantities,
                entry,
                tipFromTarget,
                fromOtherSide,
                line.flatMap(shaft -> seen.tip().map(shaft::offset)));
    }

    /** Seen length and bow need no skin; two marks always lie on one line, so that they show no bow. */
    private void extent(StraightLine<T> line) {
        List<PointMm<T>> points = new ArrayList<>(seen.shaft());
        seen.tip().ifPresent(points::add);
        Comparator<T> byValue = Comparator.comparingDouble(RealFieldElement::getReal);
        List<T> positions = points.stream().map(line::position).sorted(byValue).toList();
        quantities.put(SEEN_LENGTH, positions.get(positions.size() - 1).subtract(positions.get(0)));
        if (seen.shaft().size() > 2) {
            seen.shaft().stream()
                    .map(point -> line.offset(point).abs())
                    .max(byValue)
                    .ifPresent(bow -> quantities.put(BOW, bow));
        } else {
            quantities.put(BOW, Reason.NOT_MARKED);
        }
    }

    private void withoutSkin() {
        for (ObservationQuantity quantity :
                List.of(ANGLE_TO_SKIN, ENTRY_DISTANCE, ENTRY_EXTRAPOLATED, ROTATION_BOUND)) {
            quantities.put(quantity, seen.shaft().isEmpty() ? Reason.NOT_MARKED : Reason.SKIN_NOT_MARKED);
        }
        boolean marked = seen.tip().isPresent() || !seen.shaft().isEmpty();
        quantities.put(DEEPEST_SEEN_DEPTH, marked ? Reason.SKIN_NOT_MARKED : Reason.NOT_MARKED);
    }

    private void againstSkin(ProbeFrame<T> axes, Optional<StraightLine<T>> line) {
        Comparator<PointMm<T>> byDepth =
                Comparator.comparingDouble(point -> point.y().getReal());
        List<PointMm<T>> shaft = seen.shaft().stream().map(axes::ofDisplay).toList();
        List<PointMm<T>> all = new ArrayList<>(shaft);
        seen.tip().map(axes::ofDisplay).ifPresent(all::add);
        all.stream()
                .max(byDepth)
                .ifPresentOrElse(
                        deepest -> quantities.put(DEEPEST_SEEN_DEPTH, deepest.y()),
                        () -> quantities.put(DEEPEST_SEEN_DEPTH, Reason.NOT_MARKED));
        if (line.isEmpty()) {
            put(Reason.NOT_MARKED, ANGLE_TO_SKIN, ENTRY_DISTANCE, ENTRY_EXTRAPOLATED, ROTATION_BOUND);
            return;
        }
        PointMm<T> shallowest = shaft.stream().min(byDepth).orElseThrow();
        shaftLine(axes, line.get(), shallowest);
    }

    private void put(Reason reason, ObservationQuantity... without) {
        for (ObservationQuantity quantity : without) {
            quantities.put(quantity, reason);
        }
    }

    private void shaftLine(ProbeFrame<T> axes, StraightLine<T> line, PointMm<T> shallowest) {
        T across = line.direction().along(axes.along());
        T into = line.direction().along(axes.into());
        boolean downwards = into.getReal() >= 0;
        T du = downwards ? across : across.negate();
        T dw = downwards ? into : into.negate();
        T angle = dw.atan2(du.abs());
        if (angle.getReal() < PARALLEL) {
            put(Reason.SHAFT_PARALLEL_TO_SKIN, ANGLE_TO_SKIN, ENTRY_DISTANCE, ENTRY_EXTRAPOLATED, ROTATION_BOUND);
            return;
        }
        // Down into the tissue the planned needle runs against u.
        fromOtherSide = du.getReal() > 0;
        quantities.put(ANGLE_TO_SKIN, angle);
        Probe probe = seen.plan().input().probe();
        if (!SkinCourse.isFlat(probe) && seen.frame().midpoint().isEmpty()) {
            put(Reason.MIDPOINT_NOT_MARKED, ENTRY_DISTANCE, ENTRY_EXTRAPOLATED, ROTATION_BOUND);
            return;
        }
        SkinCourse.of(probe)
                .meets(footOf(axes, line, shallowest), new PointMm<>(du.negate(), dw.negate()))
                .ifPresentOrElse(
                        meets -> entry(meets, shallowest, new PointMm<>(du, dw)),
                        () -> put(Reason.SHAFT_PARALLEL_TO_SKIN, ENTRY_DISTANCE, ENTRY_EXTRAPOLATED, ROTATION_BOUND));
    }

    /** The point of the shaft line beside a mark. */
    private PointMm<T> footOf(ProbeFrame<T> axes, StraightLine<T> line, PointMm<T> mark) {
        T position = line.position(axes.toDisplay(mark));
        return axes.ofDisplay(line.through().plus(line.direction(), position));
    }

    private void entry(PointMm<T> meets, PointMm<T> shallowest, PointMm<T> into) {
        entry = Optional.of(meets);
        if (seen.frame().midpoint().isPresent()) {
            quantities.put(ENTRY_DISTANCE, meets.x());
        } else {
            quantities.put(ENTRY_DISTANCE, Reason.MIDPOINT_NOT_MARKED);
        }
        quantities.put(ENTRY_EXTRAPOLATED, shallowest.minus(meets).along(into));
        rotationBound(meets, into);
    }

    /**
     * With s from the puncture to the last seen point and b the beam's thickness, a probe rotated about its depth axis by
     * more than {@code asin(b / (2 s cos a))} would have lost the needle before that point: the part of the shaft along the
     * face is {@code s cos a}. Source: elementary; a needle that starts on the mid-plane.
     */
    private void rotationBound(PointMm<T> meets, PointMm<T> into) {
        Comparator<T> byValue = Comparator.comparingDouble(RealFieldElement::getReal);
        ProbeFrame<T> axes = seen.axes().orElseThrow();
        List<PointMm<T>> points = new ArrayList<>(seen.shaft());
        seen.tip().ifPresent(points::add);
        T seenTo = points.stream()
                .map(axes::ofDisplay)
                .map(point -> point.minus(meets).along(into))
                .max(byValue)
                .orElseThrow();
        T alongFace = seenTo.multiply(into.x()).abs();
        double half = seen.plan().input().probe().beamThicknessMm().orElse(1) / 2;
        if (alongFace.getReal() <= half) {
            quantities.put(ROTATION_BOUND, Reason.VERTICAL_PATH);
        } else {
            quantities.put(ROTATION_BOUND, alongFace.reciprocal().multiply(half).asin());
        }
    }

    /** All that needs to know where the tip is. */
    private void tip() {
        if (!seen.tipConfirmed()) {
            put(Reason.TIP_NOT_CONFIRMED, TIP_DEPTH, PATH, TIP_TO_TARGET);
            return;
        }
        PointMm<T> tip = seen.tip().orElseThrow();
        Optional<PointMm<T>> target = seen.frame().target().map(seen.frame().scale()::onDisplay);
        target.ifPresentOrElse(
                point -> {
                    PointMm<T> offset = tip.minus(point);
                    quantities.put(TIP_TO_TARGET, offset.x().hypot(offset.y()));
                    tipFromTarget = seen.axes()
                            .map(axes -> new PointMm<>(offset.along(axes.along()), offset.along(axes.into())));
                },
                () -> quantities.put(TIP_TO_TARGET, Reason.TARGET_NOT_MARKED));
        seen.axes()
                .map(axes -> axes.ofDisplay(tip))
                .ifPresentOrElse(this::path, () -> put(Reason.SKIN_NOT_MARKED, TIP_DEPTH, PATH));
    }

    private void path(PointMm<T> tip) {
        quantities.put(TIP_DEPTH, tip.y());
        entry.ifPresentOrElse(
                from -> {
                    PointMm<T> way = tip.minus(from);
                    quantities.put(PATH, way.x().hypot(way.y()));
                },
                () -> quantities.put(PATH, quantities.reason(ENTRY_EXTRAPOLATED).orElse(Reason.NOT_MARKED)));
    }
}
