// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.PointMm;
import java.util.Optional;
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
    /** Empty where no skin is met at the decided angle. */
    static <T extends RealFieldElement<T>> Optional<InPlanePath<T>> find(InPlaneScene<T> scene, Decision decision) {
        if (decision instanceof Decision.Angle held) {
            return atAngle(scene, held.radians());
        }
        return Optional.of(atEntry(scene, ((Decision.Entry) decision).alongMm()));
    }

    /** From an entry that the skin model describes. */
    static <T extends RealFieldElement<T>> InPlanePath<T> atEntry(InPlaneScene<T> scene, double alongMm) {
        T along = scene.exact(alongMm);
        PointMm<T> entry = new PointMm<>(along, scene.skin().depthAt(along));
        T run = entry.x().subtract(scene.target().x());
        T rise = scene.target().y().subtract(entry.y());
        return new InPlanePath<>(scene, entry, run, rise, rise.atan2(run), run.hypot(rise));
    }

    private static <T extends RealFieldElement<T>> Optional<InPlanePath<T>> atAngle(
            InPlaneScene<T> scene, double radians) {
        // A right angle's cosine is not quite zero in binary; the run of an upright path is.
        boolean upright = radians >= Math.PI / 2;
        PointMm<T> up = new PointMm<>(
                scene.exact(upright ? 0 : Math.cos(radians)), scene.exact(upright ? -1 : -Math.sin(radians)));
        return scene.skin().meets(scene.target(), up).map(entry -> {
            T run = entry.x().subtract(scene.target().x());
            T rise = scene.target().y().subtract(entry.y());
            return new InPlanePath<>(scene, entry, run, rise, scene.exact(radians), run.hypot(rise));
        });
    }

    /** The end of the extension beyond the target by the overshoot. */
    PointMm<T> beyond() {
        T share = length.reciprocal().multiply(scene.limits().overshootMm()).add(1.0);
        return at(share);
    }

    /** Nominal entry along the skin line, mm. */
    double entryAlong() {
        return entry.x().getReal();
    }

    double degrees() {
        return Math.toDegrees(angle.getReal());
    }

    /** A point of the path, {@code share} of the way from entry to target. */
    PointMm<T> at(T share) {
        return new PointMm<>(entry.x().subtract(run.multiply(share)), entry.y().add(rise.multiply(share)));
    }
}
