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

    /**
     * The scale for a measurement: the usable region that holds all the marks, or without any region the pixel spacing,
     * then the stated scale.
     *
     * @param marks target, shaft and tip; one or more
     * @throws dev.plumbline.problem.Refusal {@code OutsideMeasuringRegion} when a mark is in no usable region or two are
     *     in different ones, {@code FrameNotCalibrated} when nothing tells the scale
     */
    public Calibration calibration(List<NamedMark> marks) {
        return new CalibrationRules(this).forMarks(marks);
    }

    /**
     * The scale of a frame nobody has marked yet: the largest usable region, or as above.
     *
     * @throws dev.plumbline.problem.Refusal as above, pointing at {@code /frame}
     */
    public Calibration calibration() {
        return new CalibrationRules(this).forWholeFrame();
    }

    /** Whether a mark on this frame lies on the same spot of the other one too: equal size and equal scale. */
    public boolean sameGeometryAs(FrameGeometry other) {
        return columns == other.columns
                && rows == other.rows
                && regions.equals(other.regions)
                && pixelSpacing.equals(other.pixelSpacing)
                && statedScale.equals(other.statedScale);
    }
}
