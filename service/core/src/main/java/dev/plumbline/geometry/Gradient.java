// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.Field;
import org.apache.commons.math3.RealFieldElement;

/**
 * A value with its first derivatives by any number of independent variables: forward automatic differentiation.
 *
 * <p>Does what Commons Math's {@code DerivativeStructure} of order 1 does, and is tested against it; it exists because
 * that type, made for any order, is several times slower. Derivatives beyond the end of an array are zero, so a number
 * that depends on early variables only stays short.
 *
 * <p>Source: chain rule (elementary).
 */
public final class Gradient implements RealFieldElement<Gradient> {
    private static final double[] NONE = {};
    private static final Gradient ZERO = new Gradient(0, NONE);
    private static final Gradient ONE = new Gradient(1, NONE);

    /** Shared between values and never written after construction. */
    private final double[] derivatives;

    private final double value;

    private Gradient(double value, double[] derivatives) {
        this.value = value;
        this.derivatives = derivatives;
    }

    public static Gradient constant(double value) {
        return new Gradient(value, NONE);
    }

    /** The variable with this index, its derivative by itself being {@code seed}. */
    public static Gradient variable(double value, int index, double seed) {
        double[] derivatives = new double[index + 1];
        derivatives[index] = seed;
        return new Gradient(value, derivatives);
    }

    /** Derivative by the variable with this index. */
    public double derivative(int index) {
        return index < derivatives.length ? derivatives[index] : 0;
    }

    /** Root of the sum of the squared derivatives. */
    public double norm() {
        double sum = 0;
        for (double derivative : derivatives) {
            sum += derivative * derivative;
        }
        return Math.sqrt(sum);
    }

    private Gradient chain(double newValue, double slope) {
        if (derivatives.length == 0) {
            return new Gradient(newValue, NONE);
        }
        double[] scaled = new double[derivatives.length];
        for (int i = 0; i < scaled.length; i++) {
            scaled[i] = slope * derivatives[i];
        }
        return new Gradient(newValue, scaled);
    }

    private Gradient chain(double newValue, double slope, Gradient other, double otherSlope) {
        boolean longer = derivatives.length >= other.derivatives.length;
        double[] large = longer ? derivatives : other.derivatives;
        double[] small = longer ? other.derivatives : derivatives;
        double largeSlope = longer ? slope : otherSlope;
        double smallSlope = longer ? otherSlope : slope;
        if (large.length == 0) {
            return new Gradient(newValue, NONE);
        }
        double[] sum = new double[large.length];
        for (int i = 0; i < small.length; i++) {
            sum[i] = largeSlope * large[i] + smallSlope * small[i];
        }
        for (int i = small.length; i < large.length; i++) {
            sum[i] = largeSlope * large[i];
        }
        return new Gradient(newValue, sum);
    }

    private Gradient withoutSlope(double newValue) {
        return new Gradient(newValue, NONE);
    }

    private Gradient chain(DoubleUnaryOperator function, double slope) {
        return chain(function.applyAsDouble(value), slope);
    }

    @Override
    public double getReal() {
        return value;
    }

    @Override
    public Gradient add(double a) {
        return new Gradient(value + a, derivatives);
    }

    @Override
    public Gradient add(Gradient a) {
        return chain(value + a.value, 1, a, 1);
    }

    @Override
    public Gradient subtract(double a) {
        return new Gradient(value - a, derivatives);
    }

    @Override
    public Gradient subtract(Gradient a) {
        return chain(value - a.value, 1, a, -1);
    }

    @Override
    public Gradient negate() {
        return chain(-value, -1);
    }

    @Override
    public Gradient multiply(int n) {
        return chain(n * value, n);
    }

    @Override
    public Gradient multiply(double a) {
        return chain(a * value, a);
    }

    @Override
    public Gradient multiply(Gradient a) {
        return chain(value * a.value, a.value, a, value);
    }

    @Override
    public Gradient divide(double a) {
        return chain(value / a, 1 / a);
    }

    @Override
    public Gradient divide(Gradient a) {
        double quotient = value / a.value;
        return chain(quotient, 1 / a.value, a, -quotient / a.value);
    }

    @Override
    public Gradient reciprocal() {
        return chain(1 / value, -1 / (value * value));
    }

    @Override
    public Gradient remainder(double a) {
        return new Gradient(Math.IEEEremainder(value, a), derivatives);
    }

    @Override
    public Gradient remainder(Gradient a) {
        double rest = Math.IEEEremainder(value, a.value);
        return chain(rest, 1, a, -Math.rint((value - rest) / a.value));
    }

    @Override
    public Gradient abs() {
        return value < 0 || (value == 0 && 1 / value < 0) ? negate() : this;
    }

    @Override
    public Gradient ceil() {
        return withoutSlope(Math.ceil(value));
    }

    @Override
    public Gradient floor() {
        return withoutSlope(Math.floor(value));
    }

    @Override
    public Gradient rint() {
        return withoutSlope(Math.rint(value));
    }

    @Override
    public long round() {
        return Math.round(value);
    }

    @Override
    public Gradient signum() {
        return withoutSlope(Math.signum(value));
    }

    @Override
    public Gradient copySign(Gradient sign) {
        return copySign(sign.value);
    }

    @Override
    public Gradient copySign(double sign) {
        return Math.copySign(1, value) == Math.copySign(1, sign) ? this : negate();
    }

    @Override
    public Gradient scalb(int n) {
        return chain(Math.scalb(value, n), Math.scalb(1.0, n));
    }

    /**
     * {@inheritDoc}
     *
     * <p>At zero, where there is no derivative, the part with the larger derivatives is taken: to first order the length may
     * grow that way (design choice).
     */
    @Override
    public Gradient hypot(Gradient y) {
        // Lengths of a case lie far from the range where squares overflow, which Math.hypot takes several times as long
        // for.
        double length = Math.sqrt(value * value + y.value * y.value);
        if (length == 0) {
            return norm() >= y.norm() ? this : y;
        }
        return chain(length, value / length, y, y.value / length);
    }

    @Override
    public Gradient sqrt() {
        double root = Math.sqrt(value);
        return chain(root, 0.5 / root);
    }

    @Override
    public Gradient cbrt() {
        double root = Math.cbrt(value);
        return chain(root, 1 / (3 * root * root));
    }

    @Override
    public Gradient rootN(int n) {
        return n == 2 ? sqrt() : n == 3 ? cbrt() : pow(1.0 / n);
    }

    @Override
    public Gradient pow(double p) {
        return chain(Math.pow(value, p), p == 0 ? 0 : p * Math.pow(value, p - 1));
    }

    @Override
    public Gradient pow(int n) {
        return pow((double) n);
    }

    @Override
    public Gradient pow(Gradient e) {
        return log().multiply(e).exp();
    }

    @Override
    public Gradient exp() {
        double power = Math.exp(value);
        return chain(power, power);
    }

    @Override
    public Gradient expm1() {
        return chain(Math::expm1, Math.exp(value));
    }

    @Override
    public Gradient log() {
        return chain(Math::log, 1 / value);
    }

    @Override
    public Gradient log1p() {
        return chain(Math::log1p, 1 / (1 + value));
    }

    @Override
    public Gradient cos() {
        return chain(Math::cos, -Math.sin(value));
    }

    @Override
    public Gradient sin() {
        return chain(Math::sin, Math.cos(value));
    }

    @Override
    public Gradient tan() {
        double tangent = Math.tan(value);
        return chain(tangent, 1 + tangent * tangent);
    }

    @Override
    public Gradient acos() {
        return chain(Math::acos, -1 / Math.sqrt(1 - value * value));
    }

    @Override
    public Gradient asin() {
        return chain(Math::asin, 1 / Math.sqrt(1 - value * value));
    }

    @Override
    public Gradient atan() {
        return chain(Math::atan, 1 / (1 + value * value));
    }

    @Override
    public Gradient atan2(Gradient x) {
        double square = value * value + x.value * x.value;
        return chain(Math.atan2(value, x.value), x.value / square, x, -value / square);
    }

    @Override
    public Gradient cosh() {
        return chain(Math::cosh, Math.sinh(value));
    }

    @Override
    public Gradient sinh() {
        return chain(Math::sinh, Math.cosh(value));
    }

    @Override
    public Gradient tanh() {
        double tangent = Math.tanh(value);
        return chain(tangent, 1 - tangent * tangent);
    }

    @Override
    public Gradient acosh() {
        return add(multiply(this).subtract(1.0).sqrt()).log();
    }

    @Override
    public Gradient asinh() {
        return add(multiply(this).add(1.0).sqrt()).log();
    }

    @Override
    public Gradient atanh() {
        return add(1.0).divide(negate().add(1.0)).log().multiply(0.5);
    }

    @Override
    public Gradient linearCombination(Gradient[] a, Gradient[] b) {
        Gradient sum = ZERO;
        for (int i = 0; i < a.length; i++) {
            sum = sum.add(a[i].multiply(b[i]));
        }
        return sum;
    }

    @Override
    public Gradient linearCombination(double[] a, Gradient[] b) {
        Gradient sum = ZERO;
        for (int i = 0; i < a.length; i++) {
            sum = sum.add(b[i].multiply(a[i]));
        }
        return sum;
    }

    @Override
    public Gradient linearCombination(Gradient a1, Gradient b1, Gradient a2, Gradient b2) {
        return a1.multiply(b1).add(a2.multiply(b2));
    }

    @Override
    public Gradient linearCombination(double a1, Gradient b1, double a2, Gradient b2) {
        return b1.chain(a1 * b1.value + a2 * b2.value, a1, b2, a2);
    }

    @Override
    public Gradient linearCombination(Gradient a1, Gradient b1, Gradient a2, Gradient b2, Gradient a3, Gradient b3) {
        return linearCombination(a1, b1, a2, b2).add(a3.multiply(b3));
    }

    @Override
    public Gradient linearCombination(double a1, Gradient b1, double a2, Gradient b2, double a3, Gradient b3) {
        return linearCombination(a1, b1, a2, b2).add(b3.multiply(a3));
    }

    @Override
    public Gradient linearCombination(
            Gradient a1, Gradient b1, Gradient a2, Gradient b2, Gradient a3, Gradient b3, Gradient a4, Gradient b4) {
        return linearCombination(a1, b1, a2, b2).add(linearCombination(a3, b3, a4, b4));
    }

    @Override
    public Gradient linearCombination(
            double a1, Gradient b1, double a2, Gradient b2, double a3, Gradient b3, double a4, Gradient b4) {
        return linearCombination(a1, b1, a2, b2).add(linearCombination(a3, b3, a4, b4));
    }

    @Override
    public Field<Gradient> getField() {
        return GradientField.INSTANCE;
    }

    @Override
    public String toString() {
        return value + " with " + derivatives.length + " derivatives";
    }

    private enum GradientField implements Field<Gradient> {
        INSTANCE;

        @Override
        public Gradient getZero() {
            return ZERO;
        }

        @Override
        public Gradient getOne() {
            return ONE;
        }

        @Override
        public Class<Gradient> getRuntimeClass() {
            return Gradient.class;
        }
    }
}
