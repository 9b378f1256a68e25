// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.observation;

import static dev.plumbline.observation.ObservationQuantity.ANGLE_TO_SKIN;
import static dev.plumbline.observation.ObservationQuantity.CROSSING_DEPTH;
import static dev.plumbline.observation.ObservationQuantity.PATH;
import static dev.plumbline.observation.ObservationQuantity.PUNCTURE_DISTANCE;
import static dev.plumbline.observation.ObservationQuantity.TIP_DEPTH;
import static dev.plumbline.observation.ObservationQuantity.TIP_TO_TARGET;

import dev.plumbline.geometry.Inputs;
import dev.plumbline.geometry.PointMm;
import dev.plumbline.geometry.Quantities;
import dev.plumbline.geometry.Reason;
import dev.plumbline.plan.OutOfPlanePath;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.math3.RealFieldElement;

/**
 * Measures a needle that crosses the image plane: the dot is where some part of it crosses, and is the tip only when a
 * person says so. The puncture distance is stated, not measured on the image.
 */
final class OutOfPlaneMeasuring<T extends RealFieldElement<T>> {
    private final ObservedFrame<T> seen;
    private final Inputs<T> inputs;
    private final Quantities<ObservationQuantity, T> quantities = new Quantities<>(ObservationQuantity.class);

    OutOfPlaneMeasuring(ObservedFrame<T> seen, Inputs<T> inputs) {
        this.seen = seen;
        this.inputs = inputs;
    }

    ObservationDraft<T> measure() {
        Optional<T> depth = depth();
        depth.ifPresentOrElse(
                d -> quantities.put(CROSSING_DEPTH, d), () -> quantities.put(CROSSING_DEPTH, whyNoDepth()));
        OptionalDouble distance = seen.input().marks().punctureDistanceMm();
        if (distance.isEmpty()) {
            quantities.put(PUNCTURE_DISTANCE, Reason.NOT_MARKED);
            quantities.put(ANGLE_TO_SKIN, Reason.NOT_MARKED);
            quantities.put(PATH, seen.tipConfirmed() ? Reason.NOT_MARKED : Reason.TIP_NOT_CONFIRMED);
        } else {
            quantities.put(PUNCTURE_DISTANCE, inputs.exact(distance.getAsDouble()));
            depth.ifPresentOrElse(d -> path(distance.getAsDouble(), d), () -> {
                quantities.put(ANGLE_TO_SKIN, whyNoDepth());
                quantities.put(PATH, seen.tipConfirmed() ? whyNoDepth() : Reason.TIP_NOT_CONFIRMED);
            });
        }
        tip(depth);
        return new ObservationDraft<>(quantities, Optional.empty(), Optional.empty(), false, Optional.empty());
    }

    private Optional<T> depth() {
        return seen.axes()
                .flatMap(axes -> seen.tip().map(dot -> axes.ofDisplay(dot).y()));
    }

    private Reason whyNoDepth() {
        return seen.tip().isEmpty() ? Reason.NOT_MARKED : Reason.SKIN_NOT_MARKED;
    }

    private void path(double distance, T depth) {
        OutOfPlanePath<T> path = OutOfPlanePath.from(inputs.exact(distance), depth);
        quantities.put(ANGLE_TO_SKIN, path.angle());
        if (seen.tipConfirmed()) {
            quantities.put(PATH, path.length());
        } else {
            quantities.put(PATH, Reason.TIP_NOT_CONFIRMED);
        }
    }

    private void tip(Optional<T> depth) {
        if (!seen.tipConfirmed()) {
            quantities.put(TIP_DEPTH, Reason.TIP_NOT_CONFIRMED);
            quantities.put(TIP_TO_TARGET, Reason.TIP_NOT_CONFIRMED);
            return;
        }
        depth.ifPresentOrElse(d -> quantities.put(TIP_DEPTH, d), () -> quantities.put(TIP_DEPTH, whyNoDepth()));
        Optional<PointMm<T>> target = seen.frame().target().map(seen.frame().scale()::onDisplay);
        target.ifPresentOrElse(
                point -> {
                    PointMm<T> offset = seen.tip().orElseThrow().minus(point);
                    quantities.put(TIP_TO_TARGET, offset.x().hypot(offset.y()));
                },
                () -> quantities.put(TIP_TO_TARGET, Reason.TARGET_NOT_MARKED));
    }
}
