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
     * Slide of the probe to the right over the whole cine, and a turn that loses the needle from its far end.
     *
     * @param lossBegins share of the cine after which less of the shaft is seen; 1 where it stays in view
     * @param lossEnds share of the cine after which nothing of it is seen
     */
    record Drift(double slideMm, double lossBegins, double lossEnds) {
        static final Drift NONE = new Drift(0, 1, 2);

        /** How much of the shaft is still seen, 1 to 0. */
        double left(double share) {
            return Math.max(0, Math.min(1, (lossEnds - share) / (lossEnds - lossBegins)));
        }
    }

    /** Share of the cine that has passed, 0 to 1. */
    double share(int frame) {
        return frames == 1 ? 1 : (double) frame / (frames - 1);
    }
}
