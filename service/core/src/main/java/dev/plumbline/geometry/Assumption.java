// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

/** What a number takes for granted because a 2-D image cannot show it; listed with every answer. */
public enum Assumption {
    NEEDLE_IN_IMAGE_PLANE("needleLiesInImagePlane", "the needle lies in the image plane"),
    NEEDLE_STRAIGHT("needleIsStraight", "the needle is straight"),
    SKIN_FLAT_BEYOND_PROBE("skinFlatBeyondProbe", "the skin is flat beyond the probe"),
    PROBE_NOT_MOVED("probeNotMoved", "the probe did not move between the frames"),
    TARGET_DID_NOT_MOVE("targetDidNotMove", "the target did not move between the frames"),
    BEAM_PERPENDICULAR_TO_SKIN("beamPerpendicularToSkin", "the beam is perpendicular to the skin"),
    SEEN_END_MAY_BE_SHAFT("seenEndMayBeShaft", "what is seen last may be shaft, not tip"),
    PIXELS_ARE_SQUARE("pixelsAreSquare", "the pixels are square"),
    /** Depths are scaled for a speed of sound that a person stated. */
    SPEED_OF_SOUND_STATED("speedOfSoundStated", "depths are scaled for the stated speed of sound");

    private final String word;
    private final String words;

    Assumption(String word, String words) {
        this.word = word;
        this.words = words;
    }

    public String word() {
        return word;
    }

    /** As a clause: "the needle is straight". */
    public String words() {
        return words;
    }
}
