// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.review;

/**
 * A two-sided confidence interval and how it was made; two methods on the same data differ, so the method is always named.
 *
 * @param low in the unit of the quantity it belongs to
 * @param high at least {@code low}
 * @param level within (0, 1), such as 0.95
 * @param method in words a reader can look up
 */
public record ConfidenceInterval(double low, double high, double level, String method) {
    public ConfidenceInterval {
        if (!(low <= high)) {
            throw new IllegalArgumentException("An interval runs from low to high.");
        }
        if (!(level > 0 && level < 1)) {
            throw new IllegalArgumentException("A confidence level lies between 0 and 1.");
        }
    }

    public boolean holds(double value) {
        return low <= value && value <= high;
    }
}
