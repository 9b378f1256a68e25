// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import java.util.List;
import org.apache.commons.math3.RealFieldElement;

/**
 * A straight line through marks, in millimetres.
 *
 * @param through a point on it: the first mark of two, the centroid of more
 * @param direction of length 1, from the first mark towards the last
 */
public record StraightLine<T extends RealFieldElement<T>>(PointMm<T> through, PointMm<T> direction) {
    /**
     * Through two marks, or fitted to more by total least squares: the sum of the squared perpendicular distances is
     * least. {@code angle = atan2(2 Sxy, Sxx - Syy) / 2} about the centroid.
     *
     * <p>Source: elementary (principal axis of a 2 x 2 scatter matrix).
     *
     * @param marks two or more, not all in one place
     */
    public static <T extends RealFieldElement<T>> StraightLine<T> through(List<PointMm<T>> marks) {
        PointMm<T> first = marks.get(0);
        PointMm<T> span = marks.get(marks.size() - 1).minus(first);
        if (marks.size() == 2) {
            T length = span.x().hypot(span.y());
            return new StraightLine<>(
                    first, new PointMm<>(span.x().divide(length), span.y().divide(length)));
        }
        return fitted(marks, span);
    }

    private static <T extends RealFieldElement<T>> StraightLine<T> fitted(List<PointMm<T>> marks, PointMm<T> span) {
        T zero = span.x().getField().getZero();
        T sumX = zero;
        T sumY = zero;
        for (PointMm<T> mark : marks) {
            sumX = sumX.add(mark.x());
            sumY = sumY.add(mark.y());
        }
        PointMm<T> centroid = new PointMm<>(sumX.divide(marks.size()), sumY.divide(marks.size()));
        T difference = zero;
        T mixed = zero;
        for (PointMm<T> mark : marks) {
            PointMm<T> d = mark.minus(centroid);
            difference = difference.add(d.x().multiply(d.x())).subtract(d.y().multiply(d.y()));
            mixed = mixed.add(d.x().multiply(d.y()));
        }
        T angle = mixed.multiply(2.0).atan2(difference).multiply(0.5);
        PointMm<T> axis = new PointMm<>(angle.cos(), angle.sin());
        boolean forward = axis.along(span).getReal() >= 0;
        return new StraightLine<>(centroid, forward ? axis : axis.opposite());
    }

    /** Signed perpendicular distance of a point. */
    public T offset(PointMm<T> point) {
        return point.minus(through).along(direction.turned());
    }

    /** Position of a point's foot along the line, from {@link #through}. */
    public T position(PointMm<T> point) {
        return point.minus(through).along(direction);
    }
}
