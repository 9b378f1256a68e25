// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.RealFieldElement;

/**
 * A frame with the marks that stand for anatomy and probe.
 *
 * @param skin none, or two and more marks along the skin line under the probe
 * @param skinAssumed the skin marks are the region's top edge, set by nobody
 */
public record MarkedFrame<T extends RealFieldElement<T>>(
        FrameGeometry geometry,
        Calibration calibration,
        Scale<T> scale,
        Optional<MarkPx<T>> midpoint,
        Optional<MarkPx<T>> target,
        List<MarkPx<T>> skin,
        boolean skinAssumed) {
    private static final double MIDPOINT_OFF_SKIN_MM = 3;
    /** Sine of the smallest angle between skin line and the image's columns at which left and right still mean something. */
    private static final double UPRIGHT = 0.1;

    public MarkedFrame {
        skin = List.copyOf(skin);
    }

    /**
     * The probe frame; empty without a skin line. The origin is the midpoint's foot, without a midpoint the target's.
     *
     * @throws Refusal when the skin line runs up and down the image
     */
    public Optional<ProbeFrame<T>> probeFrame(Orientation orientation, String skinPointer) {
        if (skin.isEmpty()) {
            return Optional.empty();
        }
        StraightLine<T> line = skinLine();
        if (Math.abs(line.direction().x().getReal()) < UPRIGHT) {
            throw new Refusal(new Problem.InvalidValue(
                    skinPointer,
                    "The skin line runs up and down the image, so that left and right mean nothing on it.",
                    "Mark the skin under the probe's face."));
        }
        PointMm<T> anchor = midpoint.or(() -> target).map(scale::onDisplay).orElse(line.through());
        return Optional.of(ProbeFrame.on(line, anchor, scale, orientation));
    }

    /** What the scale takes for granted: a distance along one direction tells both axes only if pixels are square. */
    public List<Assumption> scaleAssumptions() {
        return calibration.knownDistance().isPresent()
                        && geometry.heightToWidth().isEmpty()
                ? List.of(Assumption.PIXELS_ARE_SQUARE)
                : List.of();
    }

    /** What to look at before trusting the scale. */
    public List<Doubt> scaleDoubts() {
        List<Doubt> doubts = new ArrayList<>();
        if (calibration.knownDistance().isPresent()) {
            doubts.add(Doubt.SCALE_STATED);
        }
        if (geometry.spacingDiffersFrom(calibration.pixel())) {
            doubts.add(Doubt.SCALE_CONTRADICTED);
        }
        return doubts;
    }

    private StraightLine<T> skinLine() {
        return StraightLine.through(skin.stream().map(scale::onDisplay).toList());
    }

    /**
     * Whether the marked midpoint is farther from the skin line than a midpoint of the face can be (design choice: 3 mm).
     *
     * <p>The face of a curved array bulges into the skin: a skin line through the ends of its face leaves its middle deeper by
     * the arc's sagitta, one along its middle by nothing. Without the arc's radius the sagitta is at most half the chord,
     * without the chord nothing tells how far down is too far.
     */
    public boolean midpointOffSkin(Probe probe) {
        if (midpoint.isEmpty() || skin.isEmpty()) {
            return false;
        }
        StraightLine<T> line = skinLine();
        PointMm<T> normal = line.direction().turned();
        double offset = line.offset(scale.onDisplay(midpoint.get())).getReal();
        boolean normalGoesIn = normal.y().getReal() > 0 != probe.imageInverted().orElse(false);
        double into = normalGoesIn ? offset : -offset;
        double deepest = probe.isCurved() ? probe.mostSagittaMm() : 0;
        return into < -MIDPOINT_OFF_SKIN_MM || into > deepest + MIDPOINT_OFF_SKIN_MM;
    }
}
