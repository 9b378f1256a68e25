// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.review;

/**
 * The analysis of variance behind the intraclass correlations: n subjects by k observers, one value each.
 *
 * <p>Source: Shrout and Fleiss, Psychol Bull 1979;86:420-428, tables 2 and 3.
 *
 * @param between subjects, MSB, n - 1 degrees of freedom
 * @param within subjects, MSW, n (k - 1)
 * @param observers MSJ, k - 1
 * @param residual MSE, (n - 1)(k - 1)
 */
record MeanSquares(int subjects, int raters, double between, double within, double observers, double residual) {
    private static final double ROUNDING = 1e-12;

    static MeanSquares of(RatingTable table) {
        int n = table.subjects();
        int k = table.observers();
        double mean = table.mean();
        double between = 0;
        double within = 0;
        double observers = 0;
        double residual = 0;
        for (int subject = 0; subject < n; subject++) {
            double ofSubject = table.meanOfSubject(subject);
            between += k * square(ofSubject - mean);
            for (int observer = 0; observer < k; observer++) {
                double x = table.at(subject, observer);
                within += square(x - ofSubject);
                residual += square(x - ofSubject - table.meanOfObserver(observer) + mean);
            }
        }
        for (int observer = 0; observer < k; observer++) {
            observers += n * square(table.meanOfObserver(observer) - mean);
        }
        double noise = square(ROUNDING * largest(table));
        return new MeanSquares(
                n,
                k,
                beyond(noise, between / (n - 1)),
                beyond(noise, within / (n * (k - 1.0))),
                beyond(noise, observers / (k - 1.0)),
                beyond(noise, residual / ((n - 1.0) * (k - 1.0))));
    }

    /** What rounding alone leaves over is no spread; a quotient of two such remainders would look like a result. */
    private static double beyond(double noise, double square) {
        return square > noise ? square : 0;
    }

    private static double largest(RatingTable table) {
        double largest = 0;
        for (int subject = 0; subject < table.subjects(); subject++) {
            for (int observer = 0; observer < table.observers(); observer++) {
                largest = Math.max(largest, Math.abs(table.at(subject, observer)));
            }
        }
        return largest;
    }

    private static double square(double x) {
        return x * x;
    }

    double withinDegrees() {
        return subjects * (raters - 1.0);
    }

    double residualDegrees() {
        return (subjects - 1.0) * (raters - 1.0);
    }
}
