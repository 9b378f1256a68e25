// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.record;

/** Which frame a case speaks of. Frame numbers count from 1. */
public sealed interface FrameRef {
    /** A file beside the case document; for the command line only. */
    record File(String path, int frameNumber) implements FrameRef {}

    /** A frame of a DICOM object that the service holds. */
    record Held(String sopInstanceUid, int frameNumber) implements FrameRef {}

    /** No DICOM at all: a size and a scale that a person states. Enough to plan and compare, never for a record. */
    record Stated(int columns, int rows, double mmPerColumn, double mmPerRow) implements FrameRef {}
}
