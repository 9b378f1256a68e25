// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.BinaryOperator;
import java.util.function.UnaryOperator;
import org.apache.commons.math3.analysis.differentiation.DerivativeStructure;
import org.junit.jupiter.api.Test;

/** Every operation against Commons Math's own automatic differentiation. */
class GradientTest {
    private record Unary(UnaryOperator<Gradient> ours, UnaryOperator<DerivativeStructure> theirs, double at) {}

    private record Binary(BinaryOperator<Gradient> ours, BinaryOperator<DerivativeStructure> theirs) {}

    private static Map<String, Unary> unary() {
        Map<String, Unary> all = new LinkedHashMap<>();
        all.put("negate", new Unary(Gradient::negate, DerivativeStructure::negate, 0.3));
        all.put("add", new Unary(x -> x.add(2.5), x -> x.add(2.5), 0.3));
        all.put("subtract", new Unary(x -> x.subtract(2.5), x -> x.subtract(2.5), 0.3));
        all.put("times int", new Unary(x -> x.multiply(3), x -> x.multiply(3), 0.3));
        all.put("times", new Unary(x -> x.multiply(2.5), x -> x.multiply(2.5), 0.3));
        all.put("over", new Unary(x -> x.divide(2.5), x -> x.divide(2.5), 0.3));
        all.put("reciprocal", new Unary(Gradient::reciprocal, DerivativeStructure::reciprocal, 0.3));
        all.put("abs", new Unary(Gradient::abs, DerivativeStructure::abs, -0.3));
        all.put("remainder", new Unary(x -> x.remainder(0.4), x -> x.remainder(0.4), 1.3));
        all.put("ceil", new Unary(Gradient::ceil, DerivativeStructure::ceil, 1.3));
        all.put("floor", new Unary(Gradient::floor, DerivativeStructure::floor, 1.3));
        all.put("rint", new Unary(Gradient::rint, DerivativeStructure::rint, 1.3));
        all.put("signum", new Unary(Gradient::signum, DerivativeStructure::signum, -1.3));
        all.put("copySign", new Unary(x -> x.copySign(-1.0), x -> x.copySign(-1.0), 1.3));
        all.put("scalb", new Unary(x -> x.scalb(3), x -> x.scalb(3), 1.3));
        all.put("sqrt", new Unary(Gradient::sqrt, DerivativeStructure::sqrt, 1.3));
        all.put("cbrt", new Unary(Gradient::cbrt, DerivativeStructure::cbrt, 1.3));
        all.put("rootN", new Unary(x -> x.rootN(4), x -> x.rootN(4), 1.3));
        all.put("pow", new Unary(x -> x.pow(2.2), x -> x.pow(2.2), 1.3));
        all.put("pow int", new Unary(x -> x.pow(3), x -> x.pow(3), 1.3));
        all.put("exp", new Unary(Gradient::exp, DerivativeStructure::exp, 0.3));
        all.put("expm1", new Unary(Gradient::expm1, DerivativeStructure::expm1, 0.3));
        all.put("log", new Unary(Gradient::log, DerivativeStructure::log, 1.3));
        all.put("log1p", new Unary(Gradient::log1p, DerivativeStructure::log1p, 0.3));
        all.put("cos", new Unary(Gradient::cos, DerivativeStructure::cos, 0.3));
        all.put("sin", new Unary(Gradient::sin, DerivativeStructure::sin, 0.3));
        all.put("tan", new Unary(Gradient::tan, DerivativeStructure::tan, 0.3));
        all.put("acos", new Unary(Gradient::acos, DerivativeStructure::acos, 0.3));
        all.put("asin", new Unary(Gradient::asin, DerivativeStructure::asin, 0.3));
        all.put("atan", new Unary(Gradient::atan, DerivativeStructure::atan, 0.3));
        all.put("cosh", new Unary(Gradient::cosh, DerivativeStructure::cosh, 0.3));
        all.put("sinh", new Unary(Gradient::sinh, DerivativeStructure::sinh, 0.3));
        all.put("tanh", new Unary(Gradient::tanh, DerivativeStructure::tanh, 0.3));
        all.put("acosh", new Unary(Gradient::acosh, DerivativeStructure::acosh, 1.3));
        all.put("asinh", new Unary(Gradient::asinh, DerivativeStructure::asinh, 0.3));
        all.put("atanh", new Unary(Gradient::atanh, DerivativeStructure::atanh, 0.3));
        return all;
    }

    private static Map<String, Binary> binary() {
        Map<String, Binary> all = new LinkedHashMap<>();
        all.put("add", new Binary(Gradient::add, DerivativeStructure::add));
        all.put("subtract", new Binary(Gradient::subtract, DerivativeStructure::subtract));
        all.put("multiply", new Binary(Gradient::multiply, DerivativeStructure::multiply));
        all.put("divide", new Binary(Gradient::divide, DerivativeStructure::divide));
        all.put("hypot", new Binary(Gradient::hypot, (x, y) -> x.hypot(y)));
        all.put("atan2", new Binary(Gradient::atan2, (x, y) -> x.atan2(y)));
        all.put("pow", new Binary(Gradient::pow, DerivativeStructure::pow));
        all.put("remainder", new Binary(Gradient::remainder, DerivativeStructure::remainder));
        all.put("copySign", new Binary(Gradient::copySign, DerivativeStructure::copySign));
        all.put(
                "linearCombination",
                new Binary(
                        (x, y) -> x.linearCombination(x, y, y, y, x, x),
                        (x, y) -> x.linearCombination(x, y, y, y, x, x)));
        all.put(
                "linearCombination of four",
                new Binary(
                        (x, y) -> x.linearCombination(2.0, x, 3.0, y, 4.0, x, 5.0, y),
                        (x, y) -> x.linearCombination(2.0, x, 3.0, y, 4.0, x, 5.0, y)));
        all.put(
                "linearCombination of arrays",
                new Binary(
                        (x, y) -> x.linearCombination(new Gradient[] {x, y}, new Gradient[] {y, y})
                                .add(x.linearCombination(new double[] {2, 3}, new Gradient[] {x, y})),
                        (x, y) -> x.linearCombination(
                                        new DerivativeStructure[] {x, y}, new DerivativeStructure[] {y, y})
                                .add(x.linearCombination(new double[] {2, 3}, new DerivativeStructure[] {x, y}))));
        return all;
    }

    @Test
    void functionsOfOneNumber() {
        unary().forEach((name, function) -> {
            Gradient ours = function.ours().apply(Gradient.variable(function.at(), 0, 1));
            DerivativeStructure theirs = function.theirs().apply(new DerivativeStructure(1, 1, 0, function.at()));
            assertThat(ours.getReal()).as(name).isCloseTo(theirs.getValue(), within(1e-14));
            assertThat(ours.derivative(0)).as(name).isCloseTo(theirs.getPartialDerivative(1), within(1e-12));
        });
    }

    @Test
    void functionsOfTwoNumbers() {
        binary().forEach((name, function) -> {
            Gradient ours = function.ours().apply(Gradient.variable(1.3, 0, 1), Gradient.variable(0.7, 1, 1));
            DerivativeStructure theirs = function.theirs()
                    .apply(new DerivativeStructure(2, 1, 0, 1.3), new DerivativeStructure(2, 1, 1, 0.7));
            assertThat(ours.getReal()).as(name).isCloseTo(theirs.getValue(), within(1e-14));
            assertThat(ours.derivative(0)).as(name).isCloseTo(theirs.getPartialDerivative(1, 0), within(1e-12));
            assertThat(ours.derivative(1)).as(name).isCloseTo(theirs.getPartialDerivative(0, 1), within(1e-12));
        });
    }

    @Test
    void theOrderOfVariablesDoesNotMatter() {
        Gradient early = Gradient.variable(1.3, 0, 1);
        Gradient late = Gradient.variable(0.7, 5, 1);
        Gradient one = early.divide(late);
        Gradient other = late.divide(early).reciprocal();
        assertThat(one.derivative(0)).isCloseTo(other.derivative(0), within(1e-14));
        assertThat(one.derivative(5)).isCloseTo(other.derivative(5), within(1e-14));
        assertThat(one.derivative(9)).isZero();
    }

    @Test
    void theFieldHasItsNeutralElements() {
        Gradient any = Gradient.variable(1.3, 0, 1);
        assertThat(any.getField().getZero().getReal()).isZero();
        assertThat(any.multiply(any.getField().getOne()).derivative(0)).isEqualTo(1);
        assertThat(any.getField().getRuntimeClass()).isEqualTo(Gradient.class);
        assertThat(any.round()).isEqualTo(1);
    }
}
