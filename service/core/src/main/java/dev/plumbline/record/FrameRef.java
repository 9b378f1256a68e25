// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.record;

import dev.plumbline.geometry.KnownDistance;
import java.util.Optional;

/** Which frame a case speaks of. Frame numbers count from 1. */
public sealed interface FrameRef {
    /** The scale that a person states for a DICOM frame without one of its own; empty for all others. */
    default Optional<KnownDistance> scale() {
        return Optional.empty();
    }

    /** The same frame with its scale stated so. */
    default FrameRef with(Optional<KnownDistance> scale) {
        return this;
    }

    /** A file beside the case document; for the command line only. */
    record File(String path, int frameNumber, Optional<KnownDistance> scale) implements FrameRef {
        /** Without a stated scale. */
        public File(String path, int frameNumber) {
            this(path, frameNumber, Optional.empty());
        }

        @Override
        public File with(Optional<KnownDistance> stated) {
            return new File(path, frameNumber, stated);
        }
    }

    /** A frame of a DICOM object that the service holds. */
    record Held(String sopInstanceUid, int frameNumber, Optional<KnownDistance> scale) implements FrameRef {
        /** Without a stated scale. */
        public Held(String sopInstanceUid, int frameNumber) {
            this(sopInstanceUid, frameNumber, Optional.empty());
        }

        @Override
        public Held with(Optional<KnownDistance> stated) {
            return new Held(sopInstanceUid, frameNumber, stated);
        }
    }

    /** No DICOM at all: a size and a scale that a person states. Enough to plan and compare, never for a record. */
    record Stated(int columns, int rows, double mmPerColumn, double mmPerRow) implements FrameRef {}
}
