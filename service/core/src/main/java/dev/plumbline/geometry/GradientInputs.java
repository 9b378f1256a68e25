// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

/**
 * Every independent input is a differentiation variable counted in its own standard uncertainty, so that a result's
 * standard uncertainty is the norm of its derivatives.
 *
 * <p>Source: JCGM 100:2008, equations 10 and 13; correlated results share their variables, so the correlation terms of
 * equation 13 are there without a matrix.
 */
public final class GradientInputs implements Inputs<Gradient> {
    private int count;

    @Override
    public Gradient exact(double value) {
        return Gradient.constant(value);
    }

    @Override
    public Gradient uncertain(double value, double standardUncertainty) {
        return Gradient.variable(value, count++, standardUncertainty);
    }

    @Override
    public double standardUncertainty(Gradient result) {
        return result.norm();
    }
}
