// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

/**
 * How much is taken in.
 *
 * @param lowWater what stays free on the disk
 * @param objectBytes the largest object, as a file
 * @param quotas of senders
 */
public record Intake(LowWater lowWater, long objectBytes, Quotas quotas) {
    /** The largest there can be. Source: design choice; one more byte no longer fits a 32-bit length. */
    public static final long MOST_BYTES = (4L << 30) - 1;

    /** Of any size, from anybody, while there is room. */
    public static Intake above(LowWater lowWater) {
        return new Intake(lowWater, MOST_BYTES, Quotas.none());
    }
}
