// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

/**
 * A point on an image in pixels, column to the right and row down.
 *
 * <p>Convention: (0, 0) is the outer corner of the top-left pixel, whose centre is (0.5, 0.5); the same as SCOORD
 * Graphic Data (DICOM PS3.3 C.18.6) and presentation-state PIXEL graphics (C.10.5), so no shift is ever needed there.
 *
 * @param column finite
 * @param row finite
 */
public record PointPx(double column, double row) {
    private static final double GRID = 64;

    public PointPx {
        if (!Double.isFinite(column) || !Double.isFinite(row)) {
            throw new IllegalArgumentException("A point needs finite coordinates.");
        }
    }

    /** On the grid of 1/64 px, which a 32-bit GraphicData value holds exactly. */
    public PointPx onGrid() {
        return new PointPx(Math.rint(column * GRID) / GRID, Math.rint(row * GRID) / GRID);
    }

    public double distanceTo(PointPx other) {
        return Math.hypot(column - other.column, row - other.row);
    }
}
