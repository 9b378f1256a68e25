// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
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
        return geometry.spacingDiffersFrom(calibration.pixel()) ? List.of(Doubt.SCALE_CONTRADICTED) : List.of();
    }

    private StraightLine<T> skinLine() {
        return StraightLine.through(skin.stream().map(scale::onDisplay).toList());
    }

    /** Whether the marked midpoint is farther from the skin line than a midpoint of the face can be (design choice: 3 mm). */
    public boolean midpointOffSkin() {
        return midpoint.isPresent()
                && !skin.isEmpty()
                && Math.abs(skinLine().offset(scale.onDisplay(midpoint.get())).getReal()) > MIDPOINT_OFF_SKIN_MM;
    }
}
