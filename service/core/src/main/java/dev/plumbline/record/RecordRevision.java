// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.record;

import dev.plumbline.deviation.Comparison;
import java.time.OffsetDateTime;
import java.util.Optional;

/**
 * One revision of a record: the case as it stood and what was computed from it. A pure function of it gives the objects.
 *
 * @param revision from 1, rising with every amendment
 * @param time of the revision: the signature's, or for a draft the time it was made; the only clock of its objects
 * @param begun time of the record's first revision: its series began then, and say so in every revision
 * @param amendment empty for what replaces nothing
 * @param sessionDose what the session had given then; kept with the revision and never computed again
 */
public record RecordRevision(
        String caseId,
        int revision,
        CaseDocument document,
        Comparison comparison,
        OffsetDateTime time,
        OffsetDateTime begun,
        Optional<Amendment> amendment,
        Optional<SessionDose> sessionDose) {
    /** A first revision, which begins the record's series. */
    public RecordRevision(
            String caseId, int revision, CaseDocument document, Comparison comparison, OffsetDateTime time) {
        this(caseId, revision, document, comparison, time, time);
    }

    /** A revision that replaces nothing. */
    public RecordRevision(
            String caseId,
            int revision,
            CaseDocument document,
            Comparison comparison,
            OffsetDateTime time,
            OffsetDateTime begun) {
        this(caseId, revision, document, comparison, time, begun, Optional.empty(), Optional.empty());
    }

    /** The same as an amendment. */
    public RecordRevision amending(Amendment why) {
        return new RecordRevision(caseId, revision, document, comparison, time, begun, Optional.of(why), sessionDose);
    }

    /** The same with what the session had given. */
    public RecordRevision with(Optional<SessionDose> given) {
        return new RecordRevision(caseId, revision, document, comparison, time, begun, amendment, given);
    }

    public boolean signed() {
        return document.signature().isPresent();
    }
}
