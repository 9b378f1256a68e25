// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import dev.plumbline.dicom.DicomFile;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** The files of held objects, looked at before they are handed out. */
final class HeldBytes {
    private final ObjectFiles files;

    HeldBytes(ObjectFiles files) {
        this.files = files;
    }

    /** The file of a held object; it never changes. */
    Path file(HeldObject object) {
        if (isWhole(object)) {
            return files.file(object.digest());
        }
        throw new StoreDamaged(
                "The file " + files.file(object.digest()) + " of a held object is missing or not as long as it was.");
    }

    /** Whether the file is there and as long as it was. */
    boolean isWhole(HeldObject object) {
        Path file = files.file(object.digest());
        try {
            return Files.exists(file) && Files.size(file) == object.size();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * Refuses to go on with a file whose bytes are not those it was left with: a copy of it elsewhere would be taken for the
     * record. Reads the whole file.
     */
    void requireUnaltered(HeldObject object) {
        try {
            if (!ObjectFiles.digest(file(object)).equals(object.digest())) {
                throw new StoreDamaged("The bytes of the file " + files.file(object.digest())
                        + " of a held object are not those it was left with.");
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A held object, read. */
    DicomFile open(HeldObject object) throws IOException {
        return DicomFile.open(file(object));
    }
}
