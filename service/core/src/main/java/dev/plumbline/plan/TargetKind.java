// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

/** What kind of place the tip is meant to stop at. */
public enum TargetKind {
    NEAR_NERVE("nearNerve"),
    FASCIAL_PLANE("fascialPlane"),
    PERIVASCULAR("perivascular"),
    CATHETER_SPACE("catheterSpace");

    private final String word;

    TargetKind(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
