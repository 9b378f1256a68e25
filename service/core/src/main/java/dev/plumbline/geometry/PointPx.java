// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import java.util.List;
import java.util.Optional;

/**
 * A point on an image in pixels, column to the right and row down.
 *
 * <p>Convention: (0, 0) is the outer corner of the top-left pixel, whose centre is (0.5, 0.5); the same as SCOORD
 * Graphic Data (DICOM PS3.3 C.18.6) and presentation-state PIXEL graphics (C.10.5), so no shift is ever needed there.
 *
 * @param column finite
 * @param row finite
 * @param repeats the marks this point is the mean of, where it was marked several times; else none
 */
public record PointPx(double column, double row, List<Repeat> repeats) {
    private static final double GRID = 64;

    public PointPx {
        repeats = List.copyOf(repeats);
        if (!Double.isFinite(column) || !Double.isFinite(row)) {
            throw new IllegalArgumentException("A point needs finite coordinates.");
        }
    }

    /** A point marked once, or computed. */
    public PointPx(double column, double row) {
        this(column, row, List.of());
    }

    /**
     * The mean of repeated marks of one point, on the grid; its spread is the point's own uncertainty.
     *
     * @throws dev.plumbline.problem.Refusal for fewer marks than show a spread
     */
    public static PointPx meanOf(List<Repeat> repeats) {
        PointPx mean = RepeatedMarks.of(repeats).mean().onGrid();
        return new PointPx(mean.column, mean.row, repeats);
    }

    /** What the repeats show; empty for a point marked once. */
    public Optional<RepeatedMarks> spread() {
        return repeats.isEmpty() ? Optional.empty() : Optional.of(RepeatedMarks.of(repeats));
    }

    /** On the grid of 1/64 px, which a 32-bit GraphicData value holds exactly. */
    public PointPx onGrid() {
        return new PointPx(Math.rint(column * GRID) / GRID, Math.rint(row * GRID) / GRID, repeats);
    }

    public double distanceTo(PointPx other) {
        return Math.hypot(column - other.column, row - other.row);
    }
}
