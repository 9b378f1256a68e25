// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.apache.commons.math3.RealFieldElement;

/**
 * The inputs of one case: every marked coordinate is one, and every equipment has two relative scale factors that all its
 * frames share; a scale stated by a known distance adds the ends of that distance.
 *
 * @param <T> the kind of number
 */
public final class CaseInputs<T extends RealFieldElement<T>> {
    private final Inputs<T> inputs;
    private final InputUncertainty uncertainty;
    private final Extents extents;
    private final Map<String, Scale<T>> factors = new HashMap<>();
    private final Map<Ruler, Scale<T>> rulers = new HashMap<>();

    private record Ruler(String equipment, KnownDistance distance, OptionalDouble heightToWidth) {}

    /**
     * Nothing is drawn yet; inputs come with the marks.
     *
     * @param extents counts only where a scanner's tolerance is stated
     */
    public CaseInputs(Inputs<T> inputs, InputUncertainty uncertainty, Extents extents) {
        this.inputs = inputs;
        this.uncertainty = uncertainty;
        this.extents = extents;
    }

    public Inputs<T> numbers() {
        return inputs;
    }

    /** A new input for each coordinate; a point marked several times is known as well as the mean of its marks. */
    public MarkPx<T> mark(PointPx point) {
        double known = point.spread()
                .map(spread -> spread.markPx(RepeatedMarks.Used.MEAN_OF_MARKS))
                .orElseGet(uncertainty::markPxOrDefault);
        return MarkPx.of(point, known, inputs);
    }

    public List<MarkPx<T>> marks(List<PointPx> points) {
        return points.stream().map(this::mark).toList();
    }

    /** A virtual mark that nobody set, known to one pixel (design choice). */
    public MarkPx<T> assumedMark(PointPx point) {
        return MarkPx.of(point, 1, inputs);
    }

    /**
     * The scale of a frame with what is uncertain about it: the factors of its equipment, and where a known distance gives
     * the scale also the two ends of that distance. The same distance stated for several frames of one equipment was
     * marked once.
     */
    public Scale<T> scale(FrameGeometry frame, Calibration calibration) {
        Scale<T> factor = factors.computeIfAbsent(frame.equipment(), this::newFactors);
        if (calibration.knownDistance().isPresent()) {
            Ruler ruler =
                    new Ruler(frame.equipment(), calibration.knownDistance().get(), frame.heightToWidth());
            Scale<T> measured = rulers.computeIfAbsent(ruler, this::measured);
            return new Scale<>(
                    factor.mmPerColumn().multiply(measured.mmPerColumn()),
                    factor.mmPerRow().multiply(measured.mmPerRow()));
        }
        return new Scale<>(
                factor.mmPerColumn().multiply(calibration.pixel().mmPerColumn()),
                factor.mmPerRow().multiply(calibration.pixel().mmPerRow()));
    }

    private Scale<T> measured(Ruler ruler) {
        KnownDistance distance = ruler.distance();
        return KnownDistance.scale(
                distance.distanceMm(),
                mark(distance.from()),
                mark(distance.to()),
                ruler.heightToWidth().orElse(1));
    }

    private Scale<T> newFactors(String equipment) {
        return new Scale<>(
                inputs.uncertain(1, relative(extents.acrossMm(equipment))),
                inputs.uncertain(1, relative(extents.downMm(equipment))));
    }

    /**
     * Relative standard uncertainty of a scale factor.
     *
     * <p>Source: a tolerance taken as a rectangular distribution, JCGM 100:2008, 4.3.7.
     */
    private double relative(double extentMm) {
        return uncertainty
                .scannerTolerance()
                .map(tolerance -> extentMm == 0
                        ? 0
                        : Math.max(tolerance.mm(), tolerance.percent() / 100 * extentMm) / Math.sqrt(3) / extentMm)
                .orElseGet(uncertainty::scaleRelativeOrDefault);
    }
}
