// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.record.FrameRef;

/** Finds the frames that a case names. */
@FunctionalInterface
public interface RecordFrames {
    /**
     * The frame with what a record needs of it.
     *
     * @throws dev.plumbline.problem.Refusal when it is not held
     */
    RecordFrame of(FrameRef.Held frame);
}
