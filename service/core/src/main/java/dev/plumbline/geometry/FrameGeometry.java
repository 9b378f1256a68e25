// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One frame as far as measuring needs it: its size and every statement about its scale.
 *
 * @param columns width in pixels
 * @param rows height in pixels
 * @param regions in the order of the object
 * @param pixelSpacing from the object; counts only where there are no regions at all
 * @param statedScale given by a person for a frame without a scale of its own
 * @param equipment names the transducer and scanner, equal for frames that share their scale errors
 * @param heightToWidth of a pixel where the object states it, (0028,0034); a known distance uses it, else square pixels
 * @param knownDistance a scale stated by a person; counts only where no usable region does
 */
public record FrameGeometry(
        int columns,
        int rows,
        List<UltrasoundRegion> regions,
        Optional<PixelSize> pixelSpacing,
        Optional<PixelSize> statedScale,
        String equipment,
        OptionalDouble heightToWidth,
        Optional<KnownDistance> knownDistance) {
    private static final double DISAGREEMENT = 0.01;
    private static final String PLANNED = "/frame";

    /** Without a known distance. */
    public FrameGeometry(
            int columns,
            int rows,
            List<UltrasoundRegion> regions,
            Optional<PixelSize> pixelSpacing,
            Optional<PixelSize> statedScale,
            String equipment) {
        this(columns, rows, regions, pixelSpacing, statedScale, equipment, OptionalDouble.empty(), Optional.empty());
    }

    public FrameGeometry {
        if (columns < 1 || rows < 1) {
            throw new IllegalArgumentException("A frame has at least one pixel.");
        }
        regions = List.copyOf(regions);
    }

    /** The same frame with a scale that a person states; with none, the frame as it is. */
    public FrameGeometry with(Optional<KnownDistance> distance) {
        return distance.isEmpty()
                ? this
                : new FrameGeometry(
                        columns, rows, regions, pixelSpacing, statedScale, equipment, heightToWidth, distance);
    }

    /** Whether the point is on the image, border included. */
    public boolean holds(PointPx point) {
        return 0 <= point.column() && point.column() <= columns && 0 <= point.row() && point.row() <= rows;
    }

    /**
     * The scale for a measurement: the usable region that holds all the marks, else a known distance, or without any
     * region the pixel spacing, then the stated scale.
     *
     * @param pointer of the frame in the case document
     * @param marks target, shaft and tip; one or more
     * @throws dev.plumbline.problem.Refusal {@code OutsideMeasuringRegion} when a mark is in no usable region or two are
     *     in different ones, {@code FrameNotCalibrated} when nothing tells the scale, {@code ContradictoryFields} when a
     *     distance is stated where a usable region tells the scale
     */
    public Calibration calibration(String pointer, List<NamedMark> marks) {
        return new CalibrationRules(this, pointer).forMarks(marks);
    }

    /** The same for the frame that the plan is made on. */
    public Calibration calibration(List<NamedMark> marks) {
        return calibration(PLANNED, marks);
    }

    /**
     * The scale of a frame nobody has marked yet: the largest usable region, or as above.
     *
     * @throws dev.plumbline.problem.Refusal as above
     */
    public Calibration calibration(String pointer) {
        return new CalibrationRules(this, pointer).forWholeFrame();
    }

    /** The same for the frame that the plan is made on. */
    public Calibration calibration() {
        return calibration(PLANNED);
    }

    /** Whether the object's pixel spacing differs from a scale by more than 1 per cent on an axis (design choice). */
    public boolean spacingDiffersFrom(PixelSize scale) {
        return pixelSpacing
                .filter(spacing -> differ(spacing.mmPerColumn(), scale.mmPerColumn())
                        || differ(spacing.mmPerRow(), scale.mmPerRow()))
                .isPresent();
    }

    private static boolean differ(double a, double b) {
        return Math.abs(a / b - 1) > DISAGREEMENT;
    }

    /** Whether a mark on this frame lies on the same spot of the other one too: equal size and equal scale. */
    public boolean sameGeometryAs(FrameGeometry other) {
        return columns == other.columns
                && rows == other.rows
                && regions.equals(other.regions)
                && pixelSpacing.equals(other.pixelSpacing)
                && statedScale.equals(other.statedScale)
                && heightToWidth.equals(other.heightToWidth)
                && knownDistance.equals(other.knownDistance);
    }
}
