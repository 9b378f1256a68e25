// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.observation;

import dev.plumbline.geometry.PointMm;
import dev.plumbline.geometry.Quantities;
import java.util.Optional;
import org.apache.commons.math3.RealFieldElement;

/**
 * An observation as formulas over the inputs of its case.
 *
 * @param entry in the probe frame of the observed frame; empty where there is none
 * @param tipFromTarget from this frame's target to the confirmed tip, in the probe frame; empty where either is unknown
 * @param fromOtherSide the needle came from the side opposite to the plan's
 * @param tipOffShaft distance of the marked tip from the shaft line, mm; empty without either
 */
public record ObservationDraft<T extends RealFieldElement<T>>(
        Quantities<ObservationQuantity, T> quantities,
        Optional<PointMm<T>> entry,
        Optional<PointMm<T>> tipFromTarget,
        boolean fromOtherSide,
        Optional<T> tipOffShaft) {}
