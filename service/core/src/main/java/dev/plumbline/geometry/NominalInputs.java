// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import org.apache.commons.math3.util.Decimal64;

/** Every input at its stated value: plain arithmetic, for deciding what to propose. */
public final class NominalInputs implements Inputs<Decimal64> {
    @Override
    public Decimal64 exact(double value) {
        return new Decimal64(value);
    }

    @Override
    public Decimal64 uncertain(double value, double standardUncertainty) {
        return new Decimal64(value);
    }

    @Override
    public double standardUncertainty(Decimal64 result) {
        return 0;
    }
}
