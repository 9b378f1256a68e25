// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import java.util.Random;
import org.apache.commons.math3.util.Decimal64;

/** Every input drawn from a normal distribution: one draw of a Monte Carlo simulation (JCGM 101). */
public final class DrawnInputs implements Inputs<Decimal64> {
    private final Random random;

    public DrawnInputs(Random random) {
        this.random = random;
    }

    @Override
    public Decimal64 exact(double value) {
        return new Decimal64(value);
    }

    @Override
    public Decimal64 uncertain(double value, double standardUncertainty) {
        return new Decimal64(value + standardUncertainty * random.nextGaussian());
    }

    @Override
    public double standardUncertainty(Decimal64 result) {
        return 0;
    }
}
