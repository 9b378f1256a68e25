// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Probe;
import dev.plumbline.geometry.Region;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Skin line, probe, ruler along the skin and depth scale: what an assistant at the bedside can measure again. */
final class ScaleItems {
    private static final double RULER_BEYOND_LAST_MM = 8;
    private static final double SHORTEST_RULER_MM = 20;
    private static final int FACE_PIECES = 40;

    private ScaleItems() {}

    /**
     * All of them, as far as the axis is known.
     *
     * @param farthestMm the farthest entry to be shown, from the axis's origin; empty where the needle does not run in the
     *     image, so that the skin beside the probe is not on it
     */
    static List<Item> of(FrameView view, OptionalDouble farthestMm) {
        return view.axis().map(axis -> of(view, axis, farthestMm)).orElse(List.of());
    }

    private static List<Item> of(FrameView view, SkinAxis axis, OptionalDouble farthestMm) {
        List<Item> items = new ArrayList<>();
        Border border = Border.of(view, axis);
        double half = axis.halfFaceMm();
        double far = Math.min(axis.u(border.far()), -half);
        boolean flat = axis.course().flat();
        double imaged = flat ? Math.max(axis.u(border.near()), half) : half;
        items.add(Item.Run.line(Role.SKIN, axis.at(flat ? far : -half, 0), axis.at(imaged, 0)));
        if (!flat && far < -half) {
            items.add(new Item.Run(Role.SKIN_BEYOND, axis.skin(-axis.leavesFaceAt(half), far), false));
        }
        farthestMm.ifPresent(farthest -> {
            double zero = view.midpointKnown() ? view.edgeMm().orElse(0) : 0;
            double last = Math.max(farthest + RULER_BEYOND_LAST_MM, zero + SHORTEST_RULER_MM);
            items.add(new Item.Run(Role.SKIN_BEYOND, axis.skin(axis.leavesFaceAt(imaged), last), false));
            items.add(new Item.Ruler(
                    Role.RULER, axis.at(zero, 0), axis.at(last, 0), last - zero, axis.at(zero, -1), caption(view)));
        });
        if (view.midpointKnown()) {
            double middle = isCurved(view, axis) ? view.faceDepthMm() : 0;
            items.add(new Item.Probe(Role.PROBE, face(view, axis), axis.at(0, middle), axis.at(0, middle - 1)));
        }
        items.add(depthScale(axis, border));
        return items;
    }

    /** A straight line, or of a curved array whose radius is stated an arc whose middle is the marked midpoint. */
    private static List<PointPx> face(FrameView view, SkinAxis axis) {
        double half = axis.halfFaceMm();
        double radius = view.probe().arcRadiusMm().orElse(0);
        if (!isCurved(view, axis)) {
            return List.of(axis.at(-half, 0), axis.at(half, 0));
        }
        double deepest = view.faceDepthMm();
        List<PointPx> arc = new ArrayList<>();
        for (int step = 0; step <= FACE_PIECES; step++) {
            double u = half * (2.0 * step / FACE_PIECES - 1);
            arc.add(axis.at(u, deepest + Math.sqrt(radius * radius - u * u) - radius));
        }
        return arc;
    }

    private static boolean isCurved(FrameView view, SkinAxis axis) {
        double half = axis.halfFaceMm();
        return view.probe().kind().equals(Optional.of(Probe.Kind.CURVED))
                && half > 0
                && view.probe().arcRadiusMm().orElse(0) > half;
    }

    private static String caption(FrameView view) {
        if (!view.midpointKnown()) {
            return "mm from above the target";
        }
        return view.edgeMm().isPresent() ? "mm from the probe's edge" : "mm from the probe's midpoint";
    }

    /** Down the side of the image that the needle does not come from. */
    private static Item depthScale(SkinAxis axis, Border border) {
        double u = axis.u(border.far());
        double deepest = Math.max(axis.w(border.farBottom()), axis.w(border.nearBottom()));
        return new Item.Ruler(
                Role.DEPTH_SCALE, axis.at(u, 0), axis.at(u, deepest), deepest, axis.at(u - 1, 0), "mm deep");
    }

    /** The sides of the measuring region, or of the frame, away from and towards the needle. */
    private record Border(PointPx far, PointPx near, PointPx farBottom, PointPx nearBottom) {
        /** A skin line steeper than 60 degrees on the image is not followed to the image's side. */
        private static final double LEAST_COSINE = 0.5;

        static Border of(FrameView view, SkinAxis axis) {
            Region region = view.calibration()
                    .region()
                    .orElse(new Region(
                            0, 0, 0, view.frame().columns() - 1, view.frame().rows() - 1));
            boolean right = axis.along().x() >= 0;
            double far = right ? region.minColumn() : region.maxColumn() + 1;
            double near = right ? region.maxColumn() + 1 : region.minColumn();
            double bottom = axis.into().y() >= 0 ? region.maxRow() + 1 : region.minRow();
            return new Border(
                    onSkin(axis, far), onSkin(axis, near), new PointPx(far, bottom), new PointPx(near, bottom));
        }

        private static PointPx onSkin(SkinAxis axis, double column) {
            double slope = Math.copySign(
                    Math.max(Math.abs(axis.along().x()), LEAST_COSINE),
                    axis.along().x());
            return axis.at((column - axis.origin().column()) * axis.pixel().mmPerColumn() / slope, 0);
        }
    }
}
