// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

/**
 * What moves from frame to frame.
 *
 * @param frames at least 1
 * @param advanceMm the needle goes in from this far behind its final place
 * @param drift of the probe
 * @param correlation between the speckle of two neighbouring frames, 0 to 1
 */
record Motion(int frames, double advanceMm, Drift drift, double correlation) {
    static final Motion STILL = new Motion(1, 0, Drift.NONE, 1);
    static final double FRAMES_PER_SECOND = 12;

    /**
     * Slide of the probe to the right over the whole cine, and the frame (as a share of the cine) at which the needle
     * has left the beam; 1 where it never does.
     */
    record Drift(double slideMm, double needleLostAt) {
        static final Drift NONE = new Drift(0, 1);
    }

    /** Share of the cine that has passed, 0 to 1. */
    double share(int frame) {
        return frames == 1 ? 1 : (double) frame / (frames - 1);
    }
}
