// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

import dev.plumbline.geometry.PixelSize;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Region;

/**
 * The part of the screen that shows tissue.
 *
 * @param bounds on the screen
 * @param corner place of the outer top-left corner
 */
public record ImageArea(Region bounds, PixelSize pixel, ScanPoint corner) {
    public int columns() {
        return bounds.maxColumn() - bounds.minColumn() + 1;
    }

    public int rows() {
        return bounds.maxRow() - bounds.minRow() + 1;
    }

    /** A place as the corner-origin point of the picture; also for places beside it. */
    public PointPx toPx(ScanPoint place) {
        return new PointPx(
                bounds.minColumn() + (place.acrossMm() - corner.acrossMm()) / pixel.mmPerColumn(),
                bounds.minRow() + (place.depthMm() - corner.depthMm()) / pixel.mmPerRow());
    }

    public ScanPoint toPlace(PointPx point) {
        return corner.plus(
                (point.column() - bounds.minColumn()) * pixel.mmPerColumn(),
                (point.row() - bounds.minRow()) * pixel.mmPerRow());
    }
}
