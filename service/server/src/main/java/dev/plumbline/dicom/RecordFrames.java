// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.record.FrameRef;

/** Finds the frames that a case names. */
@FunctionalInterface
public interface RecordFrames {
    /** @throws dev.plumbline.problem.Refusal when the frame is not held */
    RecordFrame of(FrameRef.Held frame);
}
