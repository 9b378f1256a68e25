// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.PointMm;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.ProbeFrame;
import dev.plumbline.geometry.Reason;
import dev.plumbline.geometry.Region;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.RealFieldElement;

/**
 * Where the beam can first show the needle, and how much of it is inside by then.
 *
 * <p>The field of view of a linear array is the strip {@code |u| <= footprint / 2}, that of a curved one the sector from the
 * center of its arc through the ends of its face; both are cut to what the image shows. Each side is a straight line; with q
 * the signed distance outside a side, the path comes inside it after {@code q_entry / (q_entry - q_target)} of its length.
 * Source: elementary.
 *
 * @param leadIn mm; empty with {@code why}
 * @param depth below the skin line, mm; empty with {@code why}
 * @param at pixel, where there is a depth
 */
record FirstSight<T extends RealFieldElement<T>>(
        Optional<T> leadIn, Optional<T> depth, Optional<PointPx> at, Reason why) {
    /** How far entry and target lie outside one side of the field; negative inside. */
    private record Side<T extends RealFieldElement<T>>(T entry, T target) {
        /** Share of the path after which it is inside this side. */
        double enters() {
            return entry.getReal() <= 0 ? 0 : target.getReal() > 0 ? Double.POSITIVE_INFINITY : share();
        }

        /** Share of the path after which it is outside this side again. */
        double leaves() {
            return target.getReal() <= 0 ? 1 : entry.getReal() > 0 ? 0 : share();
        }

        private double share() {
            return entry.getReal() / (entry.getReal() - target.getReal());
        }
    }

    static <T extends RealFieldElement<T>> FirstSight<T> of(InPlanePath<T> path) {
        InPlaneScene<T> scene = path.scene();
        if (!scene.midpointKnown()) {
            return unknown(Reason.MIDPOINT_NOT_MARKED);
        }
        List<Side<T>> sides = new ArrayList<>();
        if (scene.halfFace().isEmpty()) {
            return unknown(Reason.NOT_MARKED);
        } else if (scene.linear()) {
            sides.addAll(strip(path, scene.halfFace().getAsDouble()));
        } else if (scene.arcCenter().isPresent()) {
            sides.addAll(sector(path, scene.arcCenter().get()));
        } else {
            return unknown(Reason.NOT_MARKED);
        }
        sides.addAll(imageSides(path));
        return through(path, sides);
    }

    private static <T extends RealFieldElement<T>> FirstSight<T> unknown(Reason why) {
        return new FirstSight<T>(Optional.empty(), Optional.empty(), Optional.empty(), why);
    }

    private static <T extends RealFieldElement<T>> FirstSight<T> through(InPlanePath<T> path, List<Side<T>> sides) {
        Side<T> last = sides.get(0);
        double leaves = 1;
        for (Side<T> side : sides) {
            // Sides that coincide but for rounding count as the first of them.
            last = side.enters() > last.enters() + Intervals.TOLERANCE_MM ? side : last;
            leaves = Math.min(leaves, side.leaves());
        }
        if (last.enters() >= leaves) {
            return new FirstSight<T>(
                    Optional.of(path.length()), Optional.empty(), Optional.empty(), Reason.NO_SHAFT_UNDER_FACE);
        }
        T share = last.enters() == 0
                ? path.scene().exact(0)
                : last.entry().divide(last.entry().subtract(last.target()));
        PointMm<T> seen = path.at(share);
        return new FirstSight<T>(
                Optional.of(path.length().multiply(share)),
                Optional.of(seen.y()),
                Optional.of(path.scene().axes().toPixel(seen)),
                Reason.NO_SHAFT_UNDER_FACE);
    }

    private static <T extends RealFieldElement<T>> List<Side<T>> strip(InPlanePath<T> path, double halfFace) {
        T entry = path.entry().x();
        T target = path.scene().target().x();
        return List.of(
                new Side<>(entry.subtract(halfFace), target.subtract(halfFace)),
                new Side<>(entry.negate().subtract(halfFace), target.negate().subtract(halfFace)));
    }

    /** The outermost beams leave the arc's center at {@code asin(half chord / radius)} to its axis. */
    private static <T extends RealFieldElement<T>> List<Side<T>> sector(InPlanePath<T> path, PointMm<T> center) {
        InPlaneScene<T> scene = path.scene();
        double sin = scene.halfFace().orElseThrow()
                / scene.input().probe().arcRadiusMm().orElseThrow();
        double cos = Math.sqrt((1 - sin) * (1 + sin));
        PointMm<T> entry = path.entry().minus(center);
        PointMm<T> target = scene.target().minus(center);
        List<Side<T>> sides = new ArrayList<>();
        for (double side : new double[] {1, -1}) {
            PointMm<T> outward = new PointMm<>(scene.exact(side * cos), scene.exact(-sin));
            sides.add(new Side<>(entry.along(outward), target.along(outward)));
        }
        return sides;
    }

    /** The sides of the shown image that the entry lies outside of; the target is always inside. */
    private static <T extends RealFieldElement<T>> List<Side<T>> imageSides(InPlanePath<T> path) {
        InPlaneScene<T> scene = path.scene();
        Region shown = scene.shown();
        PointPx pixel = scene.axes().toPixel(path.entry());
        if (shown.contains(pixel)) {
            return List.of();
        }
        T perColumn = scene.frame().scale().mmPerColumn();
        T perRow = scene.frame().scale().mmPerRow();
        List<Side<T>> sides = new ArrayList<>();
        if (pixel.column() > shown.maxColumn() + 1) {
            sides.add(after(across(path), perColumn.multiply(shown.maxColumn() + 1.0)));
        }
        if (pixel.column() < shown.minColumn()) {
            sides.add(before(across(path), perColumn.multiply((double) shown.minColumn())));
        }
        if (pixel.row() > shown.maxRow() + 1) {
            sides.add(after(down(path), perRow.multiply(shown.maxRow() + 1.0)));
        }
        if (pixel.row() < shown.minRow()) {
            sides.add(before(down(path), perRow.multiply((double) shown.minRow())));
        }
        return sides;
    }

    /** Entry and target across the display. */
    private static <T extends RealFieldElement<T>> Side<T> across(InPlanePath<T> path) {
        ProbeFrame<T> axes = path.scene().axes();
        return new Side<>(
                axes.acrossDisplay(path.entry()),
                axes.acrossDisplay(path.scene().target()));
    }

    /** Entry and target down the display. */
    private static <T extends RealFieldElement<T>> Side<T> down(InPlanePath<T> path) {
        ProbeFrame<T> axes = path.scene().axes();
        return new Side<>(
                axes.downDisplay(path.entry()), axes.downDisplay(path.scene().target()));
    }

    private static <T extends RealFieldElement<T>> Side<T> after(Side<T> at, T bound) {
        return new Side<>(at.entry().subtract(bound), at.target().subtract(bound));
    }

    private static <T extends RealFieldElement<T>> Side<T> before(Side<T> at, T bound) {
        return new Side<>(bound.subtract(at.entry()), bound.subtract(at.target()));
    }
}
