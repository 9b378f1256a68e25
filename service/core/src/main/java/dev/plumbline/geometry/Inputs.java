// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import org.apache.commons.math3.RealFieldElement;

/**
 * Where a formula's numbers come from. The same formula, run over different inputs, gives a plain value, a value with
 * its derivatives, or one draw of a Monte Carlo simulation.
 *
 * @param <T> the kind of number
 */
public interface Inputs<T extends RealFieldElement<T>> {
    /** A number that is a decision or a definition. */
    T exact(double value);

    /** A new independent input; call it once for each input and share the result, so that correlation takes care of itself. */
    T uncertain(double value, double standardUncertainty);

    /** First-order standard uncertainty of a result; 0 where these inputs carry none. */
    double standardUncertainty(T result);
}
