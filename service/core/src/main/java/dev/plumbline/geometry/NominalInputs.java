// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

/**
 * Every input at its stated value, without derivatives: for deciding what to propose. The numbers are of the same type as
 * those of {@link GradientInputs}, so that a running program has one kind of number only and the compiler can see through
 * every formula.
 */
public final class NominalInputs implements Inputs<Gradient> {
    @Override
    public Gradient exact(double value) {
        return Gradient.constant(value);
    }

    @Override
    public Gradient uncertain(double value, double standardUncertainty) {
        return Gradient.constant(value);
    }

    @Override
    public double standardUncertainty(Gradient result) {
        return 0;
    }
}
