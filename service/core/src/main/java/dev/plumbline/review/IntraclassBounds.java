// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.review;

import dev.plumbline.review.IntraclassCorrelation.Form;
import java.util.Optional;

/**
 * Confidence bounds of the six intraclass correlations from F quantiles; for ICC(2,.) the approximation with fractional
 * degrees of freedom.
 *
 * <p>Source: Shrout and Fleiss, Psychol Bull 1979;86:420-428 (formulas of the bounds from memory). Check values: what
 * another program prints for the paper's data, {@code external/shrout_fleiss_1979_results.csv}.
 */
final class IntraclassBounds {
    private static final String METHOD = "Shrout-Fleiss 1979, F";

    private IntraclassBounds() {}

    /** Empty where there is no F, because a mean square is zero, or no finite bound. */
    static Optional<ConfidenceInterval> of(MeanSquares squares, Form form, double level) {
        if (!(squares.within() > 0) || !(squares.residual() > 0) || !(squares.between() > 0)) {
            return Optional.empty();
        }
        return switch (form) {
            case ONE_WAY_SINGLE -> Optional.of(oneWay(squares, level));
            case ONE_WAY_MEAN -> ofMean(oneWay(squares, level), squares.raters());
            case FIXED_SINGLE -> Optional.of(fixed(squares, level));
            case FIXED_MEAN -> ofMean(fixed(squares, level), squares.raters());
            case RANDOM_SINGLE -> random(squares, level);
            case RANDOM_MEAN -> random(squares, level).flatMap(one -> ofMean(one, squares.raters()));
        };
    }

    private static ConfidenceInterval oneWay(MeanSquares m, double level) {
        return byF(m.between() / m.within(), m, m.withinDegrees(), level);
    }

    private static ConfidenceInterval fixed(MeanSquares m, double level) {
        return byF(m.between() / m.residual(), m, m.residualDegrees(), level);
    }

    private static ConfidenceInterval byF(double f, MeanSquares m, double degrees, double level) {
        double k = m.raters();
        double fLow = f / Quantile.fisher(level, m.subjects() - 1.0, degrees);
        double fHigh = f * Quantile.fisher(level, degrees, m.subjects() - 1.0);
        return new ConfidenceInterval((fLow - 1) / (fLow + k - 1), (fHigh - 1) / (fHigh + k - 1), level, METHOD);
    }

    /** Spearman-Brown, from one value to the mean of k; empty where the lower bound runs past its pole. */
    private static Optional<ConfidenceInterval> ofMean(ConfidenceInterval one, double k) {
        if (!(1 + (k - 1) * one.low() > 0)) {
            return Optional.empty();
        }
        return Optional.of(new ConfidenceInterval(
                k * one.low() / (1 + (k - 1) * one.low()),
                k * one.high() / (1 + (k - 1) * one.high()),
                one.level(),
                one.method()));
    }

    /** Empty where the approximation breaks down, which it does for markedly negative correlations. */
    private static Optional<ConfidenceInterval> random(MeanSquares m, double level) {
        double k = m.raters();
        double n = m.subjects();
        double degrees = fractionalDegrees(m);
        double fOver = Quantile.fisher(level, n - 1, degrees);
        double fUnder = Quantile.fisher(level, degrees, n - 1);
        double spread = k * m.observers() + (k * n - k - n) * m.residual();
        double underLow = fOver * spread + n * m.between();
        double underHigh = spread + n * fUnder * m.between();
        if (!(underLow > 0) || !(underHigh > 0)) {
            return Optional.empty();
        }
        double low = n * (m.between() - fOver * m.residual()) / underLow;
        double high = n * (fUnder * m.between() - m.residual()) / underHigh;
        return low <= high ? Optional.of(new ConfidenceInterval(low, high, level, METHOD)) : Optional.empty();
    }

    private static double fractionalDegrees(MeanSquares m) {
        double k = m.raters();
        double n = m.subjects();
        double fObservers = m.observers() / m.residual();
        double rho = (m.between() - m.residual())
                / (m.between() + (k - 1) * m.residual() + k * (m.observers() - m.residual()) / n);
        double rest = n * (1 + (k - 1) * rho) - k * rho;
        double above = k * rho * fObservers + rest;
        return (k - 1)
                * (n - 1)
                * above
                * above
                / ((n - 1) * k * k * rho * rho * fObservers * fObservers + rest * rest);
    }
}
