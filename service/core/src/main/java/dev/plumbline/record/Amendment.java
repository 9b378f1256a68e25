// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.record;

/**
 * Why a revision of a record replaces an earlier one. The earlier one stays as it is.
 *
 * @param number of the amendment, from 1
 * @param replaces number of the one revision that is replaced
 * @param reason in the words of who amends
 * @param changed what is different, in words
 */
public record Amendment(int number, int replaces, String reason, String changed) {
    /** Between the reason and what changed; a reason must not hold it, so that the two are told apart when read back. */
    public static final String CHANGED = "; changed: ";

    /** As it stands in the report. */
    public String text() {
        return "Amendment " + number + ": " + reason + CHANGED + changed;
    }
}
