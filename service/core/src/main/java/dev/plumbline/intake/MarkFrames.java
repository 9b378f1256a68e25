// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.intake;

import dev.plumbline.geometry.FrameGeometry;
import java.util.Optional;

/** The images of one study that are held. */
public interface MarkFrames {
    /** How many frames an image has; empty where the study holds no such image. */
    Optional<Integer> count(String sopInstanceUid);

    /**
     * Size and scale of one frame.
     *
     * @param number from 1 to the count
     */
    FrameGeometry geometry(String sopInstanceUid, int number);
}
