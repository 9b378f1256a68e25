// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.Readings;

/** The nearest change that would make a plan fit the limits, in words and with its values. */
public record WayOut(Kind kind, Readings<PlanQuantity> readings, String text) {
    /** What would be changed. */
    public enum Kind {
        LONGER_NEEDLE("longerNeedle"),
        STEEPER_WITH_HEEL_IN("steeperWithHeelIn"),
        SHALLOWER("shallower"),
        FROM_PROBES_OTHER_END("fromProbesOtherEnd"),
        /** Out-of-plane: from a nearer puncture. */
        STEEPER("steeper"),
        OUT_OF_PLANE("outOfPlane"),
        ENTRY_AT_PROBE_EDGE("entryAtProbeEdge");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }
}
