// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import java.time.OffsetDateTime;
import java.util.List;

/**
 * A revision of a record as the store holds it; the time that its objects carry belongs to it.
 *
 * @param revision from 1
 * @param document JSON of what the record says
 * @param objects SOP Instance UIDs of its objects in the archive, the report first; empty for a draft
 */
public record StoredRevision(
        String caseId,
        int revision,
        OffsetDateTime time,
        State state,
        String document,
        String reportUid,
        List<String> objects) {
    public StoredRevision {
        objects = List.copyOf(objects);
    }

    /** Where the revision is in its life. Source: SR document life, DICOM PS3.3 C.17.2 flags. */
    public enum State {
        DRAFT("draft"),
        SIGNED("signed"),
        WITHDRAWN("withdrawn");

        private final String word;

        State(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }
}
