// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.review;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;

/**
 * So many of so many. Numerator and denominator are kept, because a share alone hides how little it rests on.
 *
 * @param count from 0 to {@code of}
 * @param of at least 1
 */
public record Proportion(int count, int of) {
    /**
     * Checks the counts.
     *
     * @throws Refusal {@link Problem.InvalidValue} for a share of nothing or of more than all
     */
    public Proportion {
        if (of < 1) {
            throw new Refusal(new Problem.InvalidValue(
                    "", "A proportion of " + of + " has no denominator.", "Count at least one."));
        }
        if (count < 0 || count > of) {
            throw new Refusal(new Problem.InvalidValue(
                    "", count + " of " + of + " is not a proportion.", "Give a count from 0 to " + of + "."));
        }
    }

    public double share() {
        return (double) count / of;
    }

    /**
     * Score interval without continuity correction: {@code (p + z^2/2n +- z sqrt(p(1-p)/n + z^2/4n^2)) / (1 + z^2/n)},
     * clamped to [0, 1] and exactly 0 or 1 at the ends, where rounding would leave 1e-17.
     *
     * <p>Source: Wilson, JASA 1927;22:209-212, as compared in Newcombe, Stat Med 1998;17:857-872 (method 3). Check
     * values: {@code external/newcombe_1998.csv}.
     */
    public ConfidenceInterval wilson(double level) {
        double z = Quantile.normal(level);
        double n = of;
        double p = share();
        double scale = 1 + z * z / n;
        double middle = (p + z * z / (2 * n)) / scale;
        double half = z * Math.sqrt(p * (1 - p) / n + z * z / (4 * n * n)) / scale;
        double low = count == 0 ? 0 : Math.max(0, middle - half);
        double high = count == of ? 1 : Math.min(1, middle + half);
        return new ConfidenceInterval(low, high, level, "Wilson score, no continuity correction");
    }

    /**
     * Exact interval from the binomial tails: the beta quantiles {@code B(a/2; x, n-x+1)} and {@code B(1-a/2; x+1, n-x)}
     * with {@code a = 1 - level}. None of n: 0 to {@code 1 - (a/2)^(1/n)}; all of n: mirrored.
     *
     * <p>Source: Clopper and Pearson, Biometrika 1934;26:404-413, as compared in Newcombe, Stat Med 1998;17:857-872
     * (method 5). The ends are written out because the beta distribution has no parameter 0 (and the interval class of
     * Commons Math 3.6.1 throws there). Check values: {@code external/newcombe_1998.csv}.
     */
    public ConfidenceInterval clopperPearson(double level) {
        double tail = 1 - Quantile.upper(level);
        double n = of;
        if (count == 0) {
            return exact(0, 1 - Math.pow(tail, 1 / n), level);
        }
        if (count == of) {
            return exact(Math.pow(tail, 1 / n), 1, level);
        }
        return exact(Quantile.beta(tail, count, n - count + 1), Quantile.beta(1 - tail, count + 1, n - count), level);
    }

    private static ConfidenceInterval exact(double low, double high, double level) {
        return new ConfidenceInterval(low, high, level, "Clopper-Pearson exact");
    }
}
