// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.review;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;

/**
 * Limits of agreement between two observers (or methods): first minus second, in the unit of the measurement.
 *
 * <p>{@code bias +- multiple * sd} holds most differences if these are roughly normal and do not grow with the size of
 * what is measured; neither is checked here. Standard error of the bias {@code s/sqrt(n)}, of a limit
 * {@code sqrt(3 s^2/n)}, which is approximate for few subjects; intervals by Student's t with n - 1 degrees of freedom.
 *
 * <p>Source: Bland and Altman, Lancet 1986;i:307-310. Check values: {@code external/bland_altman_pefr_1986.csv}.
 *
 * @param subjects n
 * @param bias mean difference
 * @param sd standard deviation of the differences
 * @param multiple 1.96 or 2: how many standard deviations the limits lie from the bias
 * @param biasInterval of the bias
 * @param lowerInterval of the lower limit
 * @param upperInterval of the upper limit
 */
public record BlandAltman(
        int subjects,
        double bias,
        double sd,
        double multiple,
        ConfidenceInterval biasInterval,
        ConfidenceInterval lowerInterval,
        ConfidenceInterval upperInterval) {
    /** Holds 95 % of a normal distribution. Source: elementary. */
    public static final double NORMAL_95 = 1.96;

    private static final String METHOD = "Bland-Altman 1986, Student's t";

    /**
     * First column minus second.
     *
     * @param multiple of the standard deviation, {@link #NORMAL_95} or the paper's 2
     * @param level of the intervals, such as 0.95
     * @throws Refusal {@link Problem.InvalidValue} unless the table has exactly two observers
     */
    public static BlandAltman of(RatingTable table, double multiple, double level) {
        if (table.observers() != 2) {
            throw new Refusal(new Problem.InvalidValue(
                    "/0",
                    "Limits of agreement compare two observers, not " + table.observers() + ".",
                    "Compare them two by two."));
        }
        if (!(multiple > 0) || Double.isInfinite(multiple)) {
            throw new Refusal(new Problem.InvalidValue(
                    "", "Limits " + multiple + " standard deviations away are no limits.", "Give 1.96 or 2."));
        }
        int n = table.subjects();
        double bias = table.meanOfObserver(0) - table.meanOfObserver(1);
        double squares = 0;
        for (int subject = 0; subject < n; subject++) {
            double off = table.at(subject, 0) - table.at(subject, 1) - bias;
            squares += off * off;
        }
        double sd = Math.sqrt(squares / (n - 1));
        double t = Quantile.student(level, n - 1);
        double ofBias = t * sd / Math.sqrt(n);
        double ofLimit = t * sd * Math.sqrt(3.0 / n);
        return new BlandAltman(
                n,
                bias,
                sd,
                multiple,
                about(bias, ofBias, level),
                about(bias - multiple * sd, ofLimit, level),
                about(bias + multiple * sd, ofLimit, level));
    }

    private static ConfidenceInterval about(double middle, double half, double level) {
        return new ConfidenceInterval(middle - half, middle + half, level, METHOD);
    }

    public double lowerLimit() {
        return bias - multiple * sd;
    }

    public double upperLimit() {
        return bias + multiple * sd;
    }
}
