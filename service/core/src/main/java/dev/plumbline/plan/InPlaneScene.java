// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.MarkedFrame;
import dev.plumbline.geometry.Orientation;
import dev.plumbline.geometry.PointMm;
import dev.plumbline.geometry.Probe;
import dev.plumbline.geometry.ProbeFrame;
import dev.plumbline.geometry.Region;
import dev.plumbline.geometry.SkinCourse;
import dev.plumbline.geometry.Spot;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.math3.RealFieldElement;

/**
 * Everything a path is computed from, in the probe frame.
 *
 * @param axes origin at the midpoint's foot, or at the target's where no midpoint was marked
 * @param target in the probe frame
 * @param limits with their values in force
 */
record InPlaneScene<T extends RealFieldElement<T>>(
        PlanInput input,
        MarkedFrame<T> frame,
        ProbeFrame<T> axes,
        SkinCourse skin,
        PointMm<T> target,
        Obstacles<T> obstacles,
        Constraints.Limits limits) {
    /** Empty without a skin line. */
    static <T extends RealFieldElement<T>> Optional<InPlaneScene<T>> of(
            PlanInput input, MarkedFrame<T> frame, Obstacles.Marked<T> marked, Orientation orientation) {
        SkinCourse skin = SkinCourse.of(input.probe());
        return frame.probeFrame(orientation, "/marks/skin")
                .map(axes -> new InPlaneScene<>(
                        input,
                        frame,
                        axes,
                        skin,
                        axes.of(frame.target().orElseThrow()),
                        Obstacles.of(marked, axes, skin),
                        input.constraints().limits()));
    }

    InPlaneScene<T> with(PlanInput other) {
        return new InPlaneScene<>(
                other, frame, axes, skin, target, obstacles, other.constraints().limits());
    }

    /** With the needle from another side. */
    InPlaneScene<T> from(Orientation orientation) {
        return of(input, frame, obstacles.marked(), orientation).orElseThrow();
    }

    /** Whether the skin model has the target under the skin. */
    boolean targetInTissue() {
        return target.y().getReal() > Intervals.TOLERANCE_MM
                && skin.reachesTo(target.x().getReal())
                && skin.depthAt(target.x()).getReal() < target.y().getReal() - Intervals.TOLERANCE_MM;
    }

    boolean skinFlat() {
        return SkinCourse.isFlat(input.probe());
    }

    Spot targetSpot() {
        return new Spot(target.x().getReal(), target.y().getReal());
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

    /**
     * Center of the arc of a curved array's face, which lies above the marked midpoint by the arc's radius; empty where any
     * of that is not known.
     */
    Optional<PointMm<T>> arcCenter() {
        if (!input.probe().isCurved()
                || !midpointKnown()
                || input.probe().arcRadiusMm().isEmpty()) {
            return Optional.empty();
        }
        double radius = input.probe().arcRadiusMm().getAsDouble();
        PointMm<T> face = axes.of(frame.midpoint().orElseThrow());
        return Optional.of(new PointMm<>(face.x(), face.y().subtract(radius)));
    }

    /**
     * The disc whose rim the face of a curved array is part of: where the face bulges into the skin no needle can pass. Empty
     * for any other face and where its arc is not known.
     */
    Optional<Obstacle> curvedFace() {
        return arcCenter()
                .map(center -> Obstacle.of(
                        "face",
                        List.of(MeasuredObstacle.spot(center)),
                        input.probe().arcRadiusMm().orElseThrow()));
    }

    /** About 1 mm near the elevation focus where nothing was stated (see {@link Probe}). */
    double beamThicknessMm() {
        return input.probe().beamThicknessMm().orElse(1);
    }

    /** Distance to keep from the hazard of this name, mm; 0 where none was stated: the outline is not crossed. */
    double marginOf(String hazard) {
        return input.marks().hazards().stream()
                .filter(marked -> marked.name().equals(hazard))
                .findFirst()
                .map(marked -> marked.marginMm().orElse(0))
                .orElse(0.0);
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
