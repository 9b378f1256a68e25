// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import java.util.Optional;
import org.apache.commons.math3.RealFieldElement;

/**
 * Share of the shaft under the face of an unsteered linear array whose mirror reflection comes back to the face.
 *
 * <p>With a the angle to the face, h half the face, t along the shaft from the entry: at 45 degrees and steeper no mirror
 * reflection comes back. Else the echo from (u, w) lands at {@code u - w tan 2a} and counts within [-h, h], so that it is
 * received up to {@code t* = (u_entry + h) cos 2a / cos a}. The shaft lies under the face from {@code t0 = max(0, (u_entry
 * - h) / cos a)} to {@code t1 = min(path, (u_entry + h) / cos a)}; the share is {@code (min(t*, t1) - t0) / (t1 - t0)}
 * within [0, 1].
 *
 * <p>Source: law of reflection, elementary; no published table of brightness against angle is used. It never ranks a path
 * and is never shown without {@link #WORDS}.
 */
public final class SpecularReturn {
    /** To stand beside the number wherever a person reads it. */
    public static final String WORDS =
            "A model of mirror reflection by geometry alone; diffuse scatter still shows the rest of the shaft.";

    private static final double NOTHING_RETURNS = Math.PI / 4;

    private SpecularReturn() {}

    /** Empty when no part of the shaft lies under the face. */
    static <T extends RealFieldElement<T>> Optional<T> of(InPlanePath<T> path, double halfFace) {
        T angle = path.angle();
        T entry = path.entry().x();
        T cos = path.run().divide(path.length());
        T zero = path.scene().exact(0);
        boolean upright = cos.getReal() == 0;
        if (upright) {
            return Math.abs(entry.getReal()) < halfFace ? Optional.of(zero) : Optional.empty();
        }
        T from = greater(zero, entry.subtract(halfFace).divide(cos));
        T to = lesser(path.length(), entry.add(halfFace).divide(cos));
        if (to.getReal() <= from.getReal()) {
            return Optional.empty();
        }
        if (angle.getReal() >= NOTHING_RETURNS) {
            return Optional.of(zero);
        }
        T received = entry.add(halfFace).multiply(angle.multiply(2.0).cos()).divide(cos);
        T share = lesser(received, to).subtract(from).divide(to.subtract(from));
        return Optional.of(lesser(greater(share, zero), zero.add(1.0)));
    }

    private static <T extends RealFieldElement<T>> T greater(T a, T b) {
        return a.getReal() >= b.getReal() ? a : b;
    }

    private static <T extends RealFieldElement<T>> T lesser(T a, T b) {
        return a.getReal() <= b.getReal() ? a : b;
    }
}
