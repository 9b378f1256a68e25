// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.geometry.PixelSize;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Probe;
import dev.plumbline.geometry.UltrasoundRegion;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Tells a linear from a curved array by the outline of the insonated area: parallel sides and a straight top, or sides that
 * meet above an arc about the point where they meet. Anything between is unknown.
 *
 * <p><b>Source:</b> elementary geometry of scan formats; the limits are design choices.
 */
final class ProbeFinder {
    private static final String MAGNIFIED =
            "A magnified part of a curved array's image would look the same: state probe.kind.";
    private static final double PARALLEL_DEG = 1.5;
    private static final double SECTOR_DEG = 5;
    private static final double SYMMETRY_DEG = 8;
    private static final double ENOUGH_SUPPORT = 0.5;
    private static final double LEAST_SHARE = 0.15;
    private static final double FILLED = 0.9;
    private static final double TOLERANCE_PX = 2.5;
    private static final double LEAST_SAGITTA_PX = 5;
    private static final double SMALLEST_FACE_MM = 8;

    private final InsonatedArea area;
    private final PixelSize pixel;
    private final Optional<UltrasoundRegion> region;
    private final int[] left;
    private final int[] right;

    /** The region is the one that {@code area} was taken from, where there is one. */
    ProbeFinder(InsonatedArea area, PixelSize pixel, Optional<UltrasoundRegion> region) {
        this.area = area;
        this.pixel = pixel;
        this.region = region;
        this.left = area.left();
        this.right = area.right();
    }

    ProbeEstimate find() {
        if (area.share() < LEAST_SHARE) {
            return ProbeEstimate.unknown("Too little of the region shows echoes to tell the array's shape.");
        }
        if (fills()) {
            return rectangle();
        }
        Optional<EdgeLine> leftEdge = EdgeLine.fit(points(left, 0), -1, tolerance());
        Optional<EdgeLine> rightEdge = EdgeLine.fit(points(right, 1), 1, tolerance());
        boolean clear = leftEdge.isPresent()
                && rightEdge.isPresent()
                && Math.min(leftEdge.get().support(), rightEdge.get().support()) >= ENOUGH_SUPPORT;
        if (!clear) {
            return ProbeEstimate.unknown("The sides of the insonated area are not clear enough to tell its shape.");
        }
        return byEdges(leftEdge.get(), rightEdge.get());
    }

    private double tolerance() {
        return TOLERANCE_PX * pixel.mmPerColumn();
    }

    /** Whether the echoes reach both sides of the region in nearly every row. */
    private boolean fills() {
        int reaching = 0;
        int slack = (int) TOLERANCE_PX;
        for (int row = 0; row < left.length; row++) {
            boolean both = left[row] != InsonatedArea.NONE
                    && left[row] - area.bounds().minColumn() <= 4 * slack
                    && area.bounds().maxColumn() - right[row] <= 4 * slack;
            reaching += both ? 1 : 0;
        }
        return reaching >= FILLED * left.length;
    }

    private ProbeEstimate rectangle() {
        double width = (area.bounds().maxColumn() - area.bounds().minColumn() + 1) * pixel.mmPerColumn();
        double middle = (area.bounds().minColumn() + area.bounds().maxColumn() + 1) / 2.0;
        String seen = "Echoes fill the region from side to side, as a linear array shows them.";
        boolean fromFace = topIsFace();
        List<String> why = List.of(
                seen, fromFace ? "The region says that its top is at depth 0, so nothing is cut off." : MAGNIFIED);
        return new ProbeEstimate(
                Optional.of(Probe.Kind.LINEAR),
                OptionalDouble.of(width),
                OptionalDouble.empty(),
                Optional.of(new PointPx(middle, area.bounds().minRow())),
                fromFace ? ProbeEstimate.Confidence.HIGH : ProbeEstimate.Confidence.LOW,
                why);
    }

    /** Whether the region's reference point says that depth 0 is at its upper edge. */
    private boolean topIsFace() {
        if (region.isEmpty() || region.get().referenceRow().isEmpty()) {
            return false;
        }
        UltrasoundRegion stated = region.get();
        double row = stated.referenceRow().getAsInt() - stated.referenceY().orElse(0) / Math.abs(stated.deltaY());
        return stated.referenceY().isPresent() && Math.abs(row) <= TOLERANCE_PX;
    }

    /** Rows down to the widest one, below which an arc may end the area; rows cut by the region's sides are left out. */
    private List<EdgeLine.Point> points(int[] extents, int outer) {
        int widest = widestRow();
        List<EdgeLine.Point> points = new ArrayList<>();
        for (int row = 0; row <= widest; row++) {
            boolean cut = extents[row] <= area.bounds().minColumn()
                    || extents[row] >= area.bounds().maxColumn();
            if (extents[row] != InsonatedArea.NONE && !cut) {
                double down = (row + 0.5 + area.bounds().minRow()) * pixel.mmPerRow();
                points.add(new EdgeLine.Point((extents[row] + outer) * pixel.mmPerColumn(), down));
            }
        }
        return points;
    }

    private int widestRow() {
        int widest = 0;
        for (int row = 0; row < left.length; row++) {
            if (left[row] != InsonatedArea.NONE && right[row] - left[row] >= right[widest] - left[widest]) {
                widest = row;
            }
        }
        return widest;
    }

    private ProbeEstimate byEdges(EdgeLine leftEdge, EdgeLine rightEdge) {
        double leftLean = leftEdge.leanDeg();
        double rightLean = rightEdge.leanDeg();
        if (Math.abs(leftLean) <= PARALLEL_DEG && Math.abs(rightLean) <= PARALLEL_DEG) {
            return strip(leftEdge, rightEdge);
        }
        boolean opens = leftLean <= -SECTOR_DEG && rightLean >= SECTOR_DEG;
        if (opens && Math.abs(leftLean + rightLean) <= SYMMETRY_DEG) {
            return sector(leftEdge, rightEdge);
        }
        return ProbeEstimate.unknown(String.format(
                Locale.ROOT,
                "The sides lean by %.0f and %.0f degrees, which is neither a linear nor a curved array's image.",
                leftLean,
                rightLean));
    }

    private ProbeEstimate strip(EdgeLine leftEdge, EdgeLine rightEdge) {
        int[] tops = Arrays.stream(area.top())
                .filter(row -> row != InsonatedArea.NONE)
                .sorted()
                .toArray();
        double top = tops[tops.length / 4] * pixel.mmPerRow();
        double leftAt = leftEdge.across(top);
        double rightAt = rightEdge.across(top);
        return new ProbeEstimate(
                Optional.of(Probe.Kind.LINEAR),
                OptionalDouble.of(rightAt - leftAt),
                OptionalDouble.empty(),
                Optional.of(toPx((leftAt + rightAt) / 2, top)),
                region.isPresent() ? ProbeEstimate.Confidence.HIGH : ProbeEstimate.Confidence.LOW,
                List.of(
                        "The insonated area is a strip with parallel sides, as a linear array shows it.",
                        region.isPresent()
                                ? "Its sides lie inside the region, so nothing is cut off there."
                                : MAGNIFIED));
    }

    private ProbeEstimate sector(EdgeLine leftEdge, EdgeLine rightEdge) {
        double apexDown = (leftEdge.at() - rightEdge.at()) / (rightEdge.slope() - leftEdge.slope());
        double apexAcross = leftEdge.across(apexDown);
        double halfAngle = Math.toRadians((rightEdge.leanDeg() - leftEdge.leanDeg()) / 2);
        double middle = Math.toRadians((rightEdge.leanDeg() + leftEdge.leanDeg()) / 2);
        FaceArc.Sides sides = new FaceArc.Sides(apexAcross, apexDown, middle, halfAngle);
        FaceArc arc = FaceArc.fit(rim(), sides, pixel.mmPerRow());
        double chord = 2 * arc.radiusMm() * Math.sin(halfAngle);
        double sagitta = arc.radiusMm() * (1 - Math.cos(halfAngle));
        if (chord < SMALLEST_FACE_MM) {
            return ProbeEstimate.unknown(String.format(
                    Locale.ROOT,
                    "The sides meet %.0f mm above the image's top: a sector probe with a small face, not a curved array.",
                    arc.radiusMm()));
        }
        boolean isArc = arc.support() >= ENOUGH_SUPPORT && sagitta >= LEAST_SAGITTA_PX * pixel.mmPerRow();
        if (!isArc) {
            return ProbeEstimate.unknown(
                    "The sides open as a curved array's do, but the top is no arc about the point where they meet.");
        }
        PointPx midpoint =
                toPx(apexAcross + arc.radiusMm() * Math.sin(middle), apexDown + arc.radiusMm() * Math.cos(middle));
        return new ProbeEstimate(
                Optional.of(Probe.Kind.CURVED),
                OptionalDouble.of(chord),
                OptionalDouble.of(arc.radiusMm()),
                Optional.of(midpoint),
                ProbeEstimate.Confidence.HIGH,
                List.of("The insonated area is a sector under an arc, as a curved array shows it."));
    }

    private List<EdgeLine.Point> rim() {
        int[] top = area.top();
        List<EdgeLine.Point> rim = new ArrayList<>();
        for (int column = 0; column < top.length; column++) {
            if (top[column] != InsonatedArea.NONE) {
                double across = (column + 0.5 + area.bounds().minColumn()) * pixel.mmPerColumn();
                rim.add(new EdgeLine.Point(across, top[column] * pixel.mmPerRow()));
            }
        }
        return rim;
    }

    private PointPx toPx(double acrossMm, double downMm) {
        return new PointPx(acrossMm / pixel.mmPerColumn(), downMm / pixel.mmPerRow()).onGrid();
    }
}
