// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import java.util.Optional;
import org.apache.commons.math3.RealFieldElement;

/**
 * How far probe and needle may part before the beam loses the tip.
 *
 * <p>With b the beam's thickness: sideways {@code b / 2}; rotation of the probe about its depth axis {@code asin(b / (2
 * path cos a))}, because the part of the path along the face is {@code path cos a}; angle between shaft and beam plane
 * {@code asin(b / (2 path))}. Source: elementary; a needle that starts on the mid-plane.
 */
final class Tolerances {
    private Tolerances() {}

    static <T extends RealFieldElement<T>> T sideways(InPlaneScene<T> scene) {
        return scene.exact(scene.beamThicknessMm() / 2);
    }

    /** Radians; empty for a path so upright that no rotation takes the tip out of the beam. */
    static <T extends RealFieldElement<T>> Optional<T> rotation(InPlanePath<T> path) {
        double half = path.scene().beamThicknessMm() / 2;
        if (path.run().getReal() <= half) {
            return Optional.empty();
        }
        return Optional.of(path.run().reciprocal().multiply(half).asin());
    }

    /** Radians; empty for a path so short that no angle takes the tip out of the beam. */
    static <T extends RealFieldElement<T>> Optional<T> shaftToPlane(InPlanePath<T> path) {
        double half = path.scene().beamThicknessMm() / 2;
        if (path.length().getReal() <= half) {
            return Optional.empty();
        }
        return Optional.of(path.length().reciprocal().multiply(half).asin());
    }
}
