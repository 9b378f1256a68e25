// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import java.util.List;
import java.util.Optional;

/**
 * One frame as far as measuring needs it: its size and every statement about its scale.
 *
 * @param columns width in pixels
 * @param rows height in pixels
 * @param regions in the order of the object
 * @param pixelSpacing from the object; counts only where there are no regions at all
 * @param statedScale given by a person for a frame without a scale of its own
 * @param equipment names the transducer and scanner, equal for frames that share their scale errors
 */
public record FrameGeometry(
        int columns,
        int rows,
        List<UltrasoundRegion> regions,
        Optional<PixelSize> pixelSpacing,
        Optional<PixelSize> statedScale,
        String equipment) {
    public FrameGeometry {
        if (columns < 1 || rows < 1) {
            throw new IllegalArgumentException("A frame has at least one pixel.");
        }
        regions = List.copyOf(regions);
    }

    /** Whether the point is on the image, border included. */
    public boolean holds(PointPx point) {
        return 0 <= point.column() && point.column() <= columns && 0 <= point.row() && point.row() <= rows;
    }
}
