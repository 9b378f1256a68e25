// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import org.apache.commons.math3.RealFieldElement;

/**
 * A straight path that crosses the image plane at a depth below the skin.
 *
 * <p>{@code angle = atan(depth / distance)}, {@code path = hypot(distance, depth)}; elementary right triangle, the beam
 * taken as perpendicular to the skin.
 *
 * @param distance on the skin from puncture to beam plane, mm
 * @param angle to the skin, radians
 * @param length puncture to crossing, mm
 */
public record OutOfPlanePath<T extends RealFieldElement<T>>(T distance, T angle, T length) {
    public static <T extends RealFieldElement<T>> OutOfPlanePath<T> from(T distance, T depth) {
        return new OutOfPlanePath<>(distance, depth.atan2(distance), distance.hypot(depth));
    }

    static <T extends RealFieldElement<T>> OutOfPlanePath<T> atAngle(double radians, T depth) {
        T distance = depth.divide(Math.tan(radians));
        T angle = depth.getField().getZero().add(radians);
        return new OutOfPlanePath<>(distance, angle, distance.hypot(depth));
    }
}
