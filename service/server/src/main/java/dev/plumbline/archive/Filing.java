// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * A record on its way in: its case, its revision, the objects it consists of, and the answer to be kept for a request
 * that comes again. Kept together or not at all.
 *
 * @param objects whole DICOM files; none for a draft, and of a signed record the report alone where its companions, which
 *     the revision names, are still to be composed
 * @param row by which it is found
 * @param when it is kept
 */
public record Filing(
        StoredCase stored,
        StoredRevision revision,
        List<byte[]> objects,
        Optional<KeptAnswer> answer,
        Optional<RecordRow> row,
        Instant when) {
    public Filing {
        objects = List.copyOf(objects);
    }

    /** What no list speaks of. */
    public Filing(
            StoredCase stored,
            StoredRevision revision,
            List<byte[]> objects,
            Optional<KeptAnswer> answer,
            Instant when) {
        this(stored, revision, objects, answer, Optional.empty(), when);
    }

    /** Whether the revision names objects that do not come with it. */
    boolean companionsDue() {
        return revision.objects().size() > objects.size();
    }

    /**
     * What came of it.
     *
     * @param added false where the same revision was held before
     * @param answer the answer that stands for the key
     */
    public record Filed(boolean added, Optional<KeptAnswer> answer) {}
}
