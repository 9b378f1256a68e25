// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.deviation;

import dev.plumbline.geometry.PointMm;
import dev.plumbline.geometry.Quantities;
import dev.plumbline.geometry.Reason;
import dev.plumbline.observation.ObservationDraft;
import dev.plumbline.observation.ObservationQuantity;
import dev.plumbline.plan.Approach;
import dev.plumbline.plan.PlanDraft;
import dev.plumbline.plan.PlanQuantity;
import java.util.Optional;
import org.apache.commons.math3.RealFieldElement;

/**
 * Observed minus planned, as one expression over the inputs both share.
 *
 * <p>Along and across split the tip's offset from its own frame's target by the plan's direction {@code (-cos a, sin a)},
 * positive beyond the target, and its normal {@code (sin a, cos a)}, positive to the deeper side. Source: elementary.
 */
final class DeviationFormulas<T extends RealFieldElement<T>> {
    private final PlanDraft<T> plan;
    private final ObservationDraft<T> observed;
    private final Quantities<DeviationQuantity, T> deviation = new Quantities<>(DeviationQuantity.class);

    DeviationFormulas(PlanDraft<T> plan, ObservationDraft<T> observed) {
        this.plan = plan;
        this.observed = observed;
    }

    Quantities<DeviationQuantity, T> compare() {
        difference(DeviationQuantity.ANGLE_TO_SKIN, ObservationQuantity.ANGLE_TO_SKIN, PlanQuantity.ANGLE_TO_SKIN);
        difference(DeviationQuantity.PATH, ObservationQuantity.PATH, PlanQuantity.PATH);
        difference(DeviationQuantity.TIP_DEPTH, ObservationQuantity.TIP_DEPTH, PlanQuantity.TARGET_DEPTH);
        if (plan.input().approach() == Approach.IN_PLANE) {
            difference(
                    DeviationQuantity.ENTRY_DISTANCE, ObservationQuantity.ENTRY_DISTANCE, PlanQuantity.ENTRY_DISTANCE);
            tipOffset();
        } else {
            difference(
                    DeviationQuantity.PUNCTURE_DISTANCE,
                    ObservationQuantity.PUNCTURE_DISTANCE,
                    PlanQuantity.PUNCTURE_DISTANCE);
            difference(DeviationQuantity.CROSSING_DEPTH, ObservationQuantity.CROSSING_DEPTH, PlanQuantity.TARGET_DEPTH);
        }
        return deviation;
    }

    private void difference(DeviationQuantity quantity, ObservationQuantity seen, PlanQuantity meant) {
        Optional<T> observedValue = observed.quantities().number(seen);
        Optional<T> plannedValue = plan.quantities().number(meant);
        if (observed.fromOtherSide()) {
            deviation.put(quantity, Reason.OTHER_SIDE);
        } else if (observedValue.isEmpty()) {
            deviation.put(quantity, observed.quantities().reason(seen).orElse(Reason.NOT_MARKED));
        } else if (plannedValue.isEmpty()) {
            deviation.put(quantity, plan.quantities().reason(meant).orElse(Reason.INFEASIBLE));
        } else {
            deviation.put(quantity, observedValue.get().subtract(plannedValue.get()));
        }
    }

    private void tipOffset() {
        Optional<T> angle = plan.quantities().number(PlanQuantity.ANGLE_TO_SKIN);
        Optional<PointMm<T>> offset = observed.tipFromTarget();
        if (observed.fromOtherSide()) {
            put(Reason.OTHER_SIDE);
        } else if (offset.isEmpty()) {
            put(observed.quantities().reason(ObservationQuantity.TIP_TO_TARGET).orElse(Reason.SKIN_NOT_MARKED));
        } else if (angle.isEmpty()) {
            put(plan.quantities().reason(PlanQuantity.ANGLE_TO_SKIN).orElse(Reason.INFEASIBLE));
        } else {
            T cos = angle.get().cos();
            T sin = angle.get().sin();
            deviation.put(DeviationQuantity.ALONG_PLAN, offset.get().along(new PointMm<>(cos.negate(), sin)));
            deviation.put(DeviationQuantity.ACROSS_PLAN, offset.get().along(new PointMm<>(sin, cos)));
        }
    }

    private void put(Reason reason) {
        deviation.put(DeviationQuantity.ALONG_PLAN, reason);
        deviation.put(DeviationQuantity.ACROSS_PLAN, reason);
    }
}
