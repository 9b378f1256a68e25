// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import dev.plumbline.dicom.DicomFile;
import dev.plumbline.geometry.FrameGeometry;
import java.io.IOException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;

/** Where the commands get the frames that a case names from. */
interface FrameFiles {
    /**
     * Opens a file.
     *
     * @throws dev.plumbline.problem.Refusal when there is no such file or it is not taken
     */
    DicomFile open(Path path) throws IOException;

    /** Size and scale of one of its frames, counted from 1. */
    FrameGeometry geometry(DicomFile file, int frameNumber);

    /** Reads each file when it is asked for. */
    static FrameFiles once() {
        return new FrameFiles() {
            @Override
            public DicomFile open(Path path) throws IOException {
                return CaseFiles.open(path);
            }

            @Override
            public FrameGeometry geometry(DicomFile file, int frameNumber) {
                return file.geometry(frameNumber);
            }
        };
    }

    /** Keeps what the last so many files say, so that many cases on one frame read it once; for several threads. */
    final class Kept implements FrameFiles {
        private final Map<Path, DicomFile> files;
        private final Map<DicomFile, Map<Integer, FrameGeometry>> geometries;

        Kept(int most) {
            files = leastUsedGoesFirst(most);
            geometries = leastUsedGoesFirst(most);
        }

        private static <K, V> Map<K, V> leastUsedGoesFirst(int most) {
            return new LinkedHashMap<>(most, 0.75f, true) {
                @Override
                protected boolean removeEldestEntry(Map.Entry<K, V> eldest) {
                    return size() > most;
                }
            };
        }

        @Override
        public synchronized DicomFile open(Path path) throws IOException {
            DicomFile known = files.get(path);
            if (known == null) {
                known = CaseFiles.open(path);
                files.put(path, known);
            }
            return known;
        }

        @Override
        public synchronized FrameGeometry geometry(DicomFile file, int frameNumber) {
            return geometries.computeIfAbsent(file, f -> new HashMap<>()).computeIfAbsent(frameNumber, file::geometry);
        }
    }
}
