// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import org.apache.commons.math3.RealFieldElement;

/**
 * A scale that a person states: two points of a frame and the distance between what they show, such as two ticks of the
 * depth ruler on the screen.
 *
 * <p>{@code mmPerColumn = distance / sqrt(columns^2 + (height * rows)^2)} and {@code mmPerRow = height * mmPerColumn}, with
 * {@code height} the height of a pixel over its width. One ruler serves both axes, so what is uncertain about its ends is
 * the same for both.
 *
 * <p>Assumes that the distance itself is exact. Source: elementary.
 *
 * @param distanceMm positive and finite
 */
public record KnownDistance(PointPx from, PointPx to, double distanceMm) {
    /**
     * Ends nearer to each other than this give no scale: at one pixel of uncertainty per coordinate the scale would be
     * uncertain by more than 7 per cent (design choice).
     */
    public static final double SHORTEST_PX = 20;

    /** A larger pixel is no picture of a patient (design choice). */
    private static final double LARGEST_MM_PER_PIXEL = 100;

    private static final double SMALLEST_MM_PER_PIXEL = 1e-6;

    public KnownDistance {
        if (!(distanceMm > 0) || Double.isInfinite(distanceMm)) {
            throw new IllegalArgumentException("A known distance is positive and finite.");
        }
    }

    /**
     * Refuses points that are not on the frame, or that give no scale.
     *
     * @param pointer of this statement
     * @throws Refusal {@link Problem.MarkOutsideFrame} or {@link Problem.InvalidValue}
     */
    public void check(String pointer, FrameGeometry frame) {
        Check.onFrame(pointer + "/from", from, frame);
        Check.onFrame(pointer + "/to", to, frame);
        double apart = from.distanceTo(to);
        if (apart < SHORTEST_PX) {
            throw new Refusal(new Problem.InvalidValue(
                    pointer,
                    "The two points of the stated scale are closer together than 20 pixels, so that one pixel at either"
                            + " end would change the scale by more than 5 per cent.",
                    "Take two points farther apart, such as the first and the last tick of the depth ruler."));
        }
        double perPixel = distanceMm / apart;
        if (perPixel < SMALLEST_MM_PER_PIXEL || perPixel > LARGEST_MM_PER_PIXEL) {
            throw new Refusal(new Problem.InvalidValue(
                    pointer + "/distanceMm",
                    "The stated scale makes a pixel smaller than 0.000001 mm or larger than 100 mm.",
                    "Give the distance between the two points in millimetres."));
        }
    }

    /** @param heightToWidth of a pixel */
    PixelSize pixel(double heightToWidth) {
        double mmPerColumn =
                distanceMm / Math.hypot(to.column() - from.column(), heightToWidth * (to.row() - from.row()));
        return new PixelSize(mmPerColumn, heightToWidth * mmPerColumn);
    }

    /** The same over any kind of number, both ends being inputs of their own. */
    static <T extends RealFieldElement<T>> Scale<T> scale(
            double distanceMm, MarkPx<T> from, MarkPx<T> to, double heightToWidth) {
        T columns = to.column().subtract(from.column());
        T rows = to.row().subtract(from.row()).multiply(heightToWidth);
        T mmPerColumn = columns.multiply(columns)
                .add(rows.multiply(rows))
                .sqrt()
                .reciprocal()
                .multiply(distanceMm);
        return new Scale<>(mmPerColumn, mmPerColumn.multiply(heightToWidth));
    }
}
