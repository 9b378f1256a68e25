// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import dev.plumbline.problem.Problem;

/** What is wrong with a frame, said at the place of the case document that names the frame. */
public final class FrameProblem {
    private FrameProblem() {}

    /** Only what has no place of its own yet, and can be wrong with a frame, is moved. */
    public static Problem at(String pointer, Problem problem) {
        if (!problem.pointer().isEmpty()) {
            return problem;
        }
        if (problem instanceof Problem.FrameNumberOutOfRange number) {
            return new Problem.FrameNumberOutOfRange(
                    pointer + "/frameNumber", number.frameNumber(), number.frameCount());
        }
        if (problem instanceof Problem.MalformedObject) {
            return new Problem.MalformedObject(pointer, problem.detail(), problem.remedy());
        }
        if (problem instanceof Problem.UnsupportedObject) {
            return new Problem.UnsupportedObject(pointer, problem.detail(), problem.remedy());
        }
        if (problem instanceof Problem.NotHeld) {
            return new Problem.NotHeld(pointer, problem.detail(), problem.remedy());
        }
        return problem;
    }
}
