// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.PointMm;
import org.apache.commons.math3.RealFieldElement;

/**
 * A straight path in the image plane, from entry to target.
 *
 * <p>{@code run = u_entry - u_target}, {@code rise = w_target - w_skin}, {@code angle = atan2(rise, run)}, {@code path =
 * hypot(run, rise)}. Source: elementary right triangle.
 *
 * @param entry in the probe frame
 * @param angle to the skin line under the probe, radians
 * @param length entry to target, mm
 */
record InPlanePath<T extends RealFieldElement<T>>(
        InPlaneScene<T> scene, PointMm<T> entry, T run, T rise, T angle, T length) {
    static <T extends RealFieldElement<T>> InPlanePath<T> of(InPlaneScene<T> scene, Decision decision) {
        if (decision instanceof Decision.Angle held) {
            return atAngle(scene, held.radians());
        }
        return atEntry(scene, ((Decision.Entry) decision).alongMm());
    }

    private static <T extends RealFieldElement<T>> InPlanePath<T> atEntry(InPlaneScene<T> scene, double alongMm) {
        PointMm<T> target = scene.target();
        PointMm<T> entry = new PointMm<>(scene.exact(alongMm), scene.exact(0));
        T run = entry.x().subtract(target.x());
        T rise = target.y().subtract(entry.y());
        return new InPlanePath<>(scene, entry, run, rise, rise.atan2(run), run.hypot(rise));
    }

    private static <T extends RealFieldElement<T>> InPlanePath<T> atAngle(InPlaneScene<T> scene, double radians) {
        PointMm<T> target = scene.target();
        T rise = target.y();
        // A right angle's cosine is not quite zero in binary; the run of an upright path is.
        T run = radians >= Math.PI / 2 ? scene.exact(0) : rise.divide(Math.tan(radians));
        PointMm<T> entry = new PointMm<>(target.x().add(run), scene.exact(0));
        return new InPlanePath<>(scene, entry, run, rise, scene.exact(radians), run.hypot(rise));
    }

    double degrees() {
        return Math.toDegrees(angle.getReal());
    }

    /** A point of the path, {@code share} of the way from entry to target. */
    PointMm<T> at(T share) {
        return new PointMm<>(entry.x().subtract(run.multiply(share)), entry.y().add(rise.multiply(share)));
    }
}
