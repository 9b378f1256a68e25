// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.MarkedFrame;
import dev.plumbline.geometry.Orientation;
import dev.plumbline.geometry.PointMm;
import dev.plumbline.geometry.Quantities;
import java.util.Optional;
import org.apache.commons.math3.RealFieldElement;

/**
 * A plan as formulas over the inputs of its case, so that what is observed can be compared with it in one expression.
 *
 * @param entry of the path in the probe frame; empty where no path could be given
 * @param target in the probe frame; empty without a skin line
 */
public record PlanDraft<T extends RealFieldElement<T>>(
        PlanInput input,
        Orientation orientation,
        MarkedFrame<T> frame,
        Quantities<PlanQuantity, T> quantities,
        Optional<PointMm<T>> entry,
        Optional<PointMm<T>> target) {}
