// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.review;

/**
 * How far repeated measurements of the same thing differ among themselves, in the unit of the measurement.
 *
 * <p>Duplicates: {@code TE = sqrt(sum d^2 / 2n)}. More repeats: the square root of the mean variance within subjects, which
 * is the same number for duplicates. A constant difference between two observers is part of it. Repeatability
 * {@code 1.96 sqrt(2) TE}: two further measurements of one subject differ by less in 95 of 100 cases, if differences are
 * roughly normal.
 *
 * <p>Source: Dahlberg 1940 (formula from memory); repeatability: Bland and Altman, Lancet 1986;i:307-310. Check values:
 * {@code external/bland_altman_pefr_1986.csv}, recomputed.
 *
 * @param subjects n
 * @param repeats of each subject
 * @param value standard deviation of one measurement, the standard uncertainty that repeating shows
 */
public record TechnicalError(int subjects, int repeats, double value) {
    /** From a table whose columns are repeats, by one person or by several. */
    public static TechnicalError of(RatingTable table) {
        return new TechnicalError(
                table.subjects(),
                table.observers(),
                Math.sqrt(MeanSquares.of(table).within()));
    }

    public double repeatability() {
        return BlandAltman.NORMAL_95 * Math.sqrt(2) * value;
    }
}
