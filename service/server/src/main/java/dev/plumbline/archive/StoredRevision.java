// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;

/**
 * A revision of a record as the store holds it; the time that its objects carry belongs to it.
 *
 * @param revision from 1
 * @param document JSON of what the record says
 * @param reportUid of the report; of the rejection note where the revision is a withdrawal
 * @param objects SOP Instance UIDs of its objects in the archive, the report first; empty for a draft
 * @param change what it does to an earlier revision; empty for a draft and a first signature
 * @param doses JSON of what the session had given when it was made; blank where nothing was
 */
public record StoredRevision(
        String caseId,
        int revision,
        OffsetDateTime time,
        State state,
        String document,
        String reportUid,
        List<String> objects,
        Optional<Change> change,
        String doses) {
    public StoredRevision {
        objects = List.copyOf(objects);
    }

    /** A revision that does nothing to an earlier one. */
    public StoredRevision(
            String caseId,
            int revision,
            OffsetDateTime time,
            State state,
            String document,
            String reportUid,
            List<String> objects) {
        this(caseId, revision, time, state, document, reportUid, objects, Optional.empty());
    }

    /** A revision of a session that had nothing given. */
    public StoredRevision(
            String caseId,
            int revision,
            OffsetDateTime time,
            State state,
            String document,
            String reportUid,
            List<String> objects,
            Optional<Change> change) {
        this(caseId, revision, time, state, document, reportUid, objects, change, "");
    }

    /**
     * What a revision does to an earlier one, which stays as it is.
     *
     * @param predecessor UID of the report that is replaced or withdrawn
     * @param reason of an amendment in words, of a withdrawal by its word
     * @param words what an amendment changed; what was said of a withdrawal
     * @param by who withdrew; blank for an amendment, which is signed
     */
    public record Change(String predecessor, String reason, String words, String by) {}

    /** What kind of revision it is; nothing ever turns one into another. */
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
