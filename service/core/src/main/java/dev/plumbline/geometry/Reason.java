// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

/** Why there is no number: the one list of the whole program, in the answers, the record and the exports. */
public enum Reason {
    NOT_MARKED("notMarked"),
    MIDPOINT_NOT_MARKED("midpointNotMarked"),
    TARGET_NOT_MARKED("targetNotMarked"),
    SKIN_NOT_MARKED("skinNotMarked"),
    TIP_NOT_CONFIRMED("tipNotConfirmed"),
    TIP_OUT_OF_PLANE("tipOutOfPlane"),
    SHAFT_NOT_VISIBLE("shaftNotVisible"),
    FRAME_NOT_CALIBRATED("frameNotCalibrated"),
    SHAFT_PARALLEL_TO_SKIN("shaftParallelToSkin"),
    INFEASIBLE("infeasible"),
    OTHER_SIDE("otherSide"),
    PROBE_MOVED("probeMoved"),
    NO_SHAFT_UNDER_FACE("noShaftUnderFace"),
    VERTICAL_PATH("verticalPath"),
    NOT_IN_THIS_PLANE("notInThisPlane"),
    NOT_LOGGED_LIVE("notLoggedLive");

    private final String word;

    Reason(String word) {
        this.word = word;
    }

    /** The name in JSON. */
    public String word() {
        return word;
    }
}
