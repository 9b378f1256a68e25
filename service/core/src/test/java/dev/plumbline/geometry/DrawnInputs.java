// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

/** One draw of a Monte Carlo simulation: every input normally distributed about its stated value. */
public final class DrawnInputs implements Inputs<Gradient> {
    private final double[] normals;
    private int next;

    /**
     * Standard normal numbers, one for each input in the order in which they are asked for; the order is the same in every
     * draw of a case.
     */
    public DrawnInputs(double[] normals) {
        this.normals = normals;
    }

    @Override
    public Gradient exact(double value) {
        return Gradient.constant(value);
    }

    @Override
    public Gradient uncertain(double value, double standardUncertainty) {
        return Gradient.constant(value + standardUncertainty * normals[next++]);
    }

    @Override
    public double standardUncertainty(Gradient result) {
        return 0;
    }
}
