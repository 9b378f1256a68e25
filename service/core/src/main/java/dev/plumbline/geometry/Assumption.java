// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

/** What a number takes for granted because a 2-D image cannot show it; listed with every answer. */
public enum Assumption {
    NEEDLE_IN_IMAGE_PLANE("needleLiesInImagePlane"),
    NEEDLE_STRAIGHT("needleIsStraight"),
    SKIN_FLAT_BEYOND_PROBE("skinFlatBeyondProbe"),
    PROBE_NOT_MOVED("probeNotMoved"),
    TARGET_DID_NOT_MOVE("targetDidNotMove"),
    BEAM_PERPENDICULAR_TO_SKIN("beamPerpendicularToSkin"),
    SEEN_END_MAY_BE_SHAFT("seenEndMayBeShaft"),
    PIXELS_ARE_SQUARE("pixelsAreSquare"),
    /** Depths are scaled for a speed of sound that a person stated. */
    SPEED_OF_SOUND_STATED("speedOfSoundStated");

    private final String word;

    Assumption(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }
}
