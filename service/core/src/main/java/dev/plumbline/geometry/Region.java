// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

/**
 * A rectangle of the image that one calibration covers.
 *
 * <p>Bounds are 0-based pixel indices, the maximum inclusive (DICOM PS3.3 C.8.5.5.1.1), not corner coordinates.
 *
 * @param index position in the sequence of regions, from 0
 */
public record Region(int index, int minColumn, int minRow, int maxColumn, int maxRow) {
    /** As every sentence counts them, from 1. */
    public int number() {
        return index + 1;
    }

    /** Whether a corner-origin point lies in the rectangle, its border included. */
    public boolean contains(PointPx point) {
        return minColumn <= point.column()
                && point.column() <= maxColumn + 1
                && minRow <= point.row()
                && point.row() <= maxRow + 1;
    }
}
