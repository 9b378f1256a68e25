// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.review;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import org.apache.commons.math3.distribution.BetaDistribution;
import org.apache.commons.math3.distribution.FDistribution;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.TDistribution;

/**
 * Two-sided critical values of the distributions that the intervals here need.
 *
 * <p>No random generator is given to the distributions: only their inverse distribution functions are used.
 */
final class Quantile {
    private static final double INVERSE_ACCURACY = 1e-13;

    private Quantile() {}

    /** The upper critical probability of a two-sided interval: 0.975 for the level 0.95. */
    static double upper(double level) {
        if (!(level > 0 && level < 1)) {
            throw new Refusal(new Problem.InvalidValue(
                    "", "A confidence level of " + level + " is not between 0 and 1.", "Give for example 0.95."));
        }
        return 1 - (1 - level) / 2;
    }

    static double normal(double level) {
        return new NormalDistribution(null, 0, 1).inverseCumulativeProbability(upper(level));
    }

    static double student(double level, double degreesOfFreedom) {
        return new TDistribution(null, degreesOfFreedom).inverseCumulativeProbability(upper(level));
    }

    static double fisher(double level, double numerator, double denominator) {
        return new FDistribution(null, numerator, denominator, INVERSE_ACCURACY)
                .inverseCumulativeProbability(upper(level));
    }

    static double beta(double probability, double alpha, double beta) {
        return new BetaDistribution(null, alpha, beta, INVERSE_ACCURACY).inverseCumulativeProbability(probability);
    }
}
