// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.MarkedFrame;
import dev.plumbline.geometry.Orientation;
import dev.plumbline.geometry.PointMm;
import dev.plumbline.geometry.Probe;
import dev.plumbline.geometry.ProbeFrame;
import dev.plumbline.geometry.Region;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.math3.RealFieldElement;

/**
 * Everything a path is computed from, in the probe frame.
 *
 * @param axes origin at the midpoint's foot, or at the target's where no midpoint was marked
 * @param target in the probe frame
 */
record InPlaneScene<T extends RealFieldElement<T>>(
        PlanInput input, MarkedFrame<T> frame, ProbeFrame<T> axes, PointMm<T> target) {
    /** Empty without a skin line. */
    static <T extends RealFieldElement<T>> Optional<InPlaneScene<T>> of(
            PlanInput input, MarkedFrame<T> frame, Orientation orientation) {
        return frame.probeFrame(orientation, "/marks/skin")
                .map(axes -> new InPlaneScene<>(
                        input, frame, axes, axes.of(frame.target().orElseThrow())));
    }

    boolean midpointKnown() {
        return frame.midpoint().isPresent();
    }

    /** Half the active face, mm; also the face's reach to each side of the midpoint. */
    OptionalDouble halfFace() {
        return half(input.probe().footprintMm());
    }

    /** From the midpoint to the end of what the needle has to pass: the housing, or the face where none was stated. */
    OptionalDouble probeEdge() {
        OptionalDouble housing = half(input.probe().housingLengthMm());
        return housing.isPresent() ? housing : halfFace();
    }

    private static OptionalDouble half(OptionalDouble length) {
        return length.isPresent() ? OptionalDouble.of(length.getAsDouble() / 2) : length;
    }

    boolean linear() {
        return input.probe().kind().equals(Optional.of(Probe.Kind.LINEAR));
    }

    /** About 1 mm near the elevation focus where nothing was stated (see {@link Probe}). */
    double beamThicknessMm() {
        return input.probe().beamThicknessMm().orElse(1);
    }

    Constraints.Limits limits() {
        return input.constraints().limits();
    }

    /** What the image shows: the measuring region, or the whole frame where there are no regions. */
    Region shown() {
        return frame.calibration()
                .region()
                .orElseGet(() -> new Region(
                        0,
                        0,
                        0,
                        frame.geometry().columns() - 1,
                        frame.geometry().rows() - 1));
    }

    T exact(double value) {
        return target.x().getField().getZero().add(value);
    }
}
