// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.record;

import dev.plumbline.deviation.Comparison;
import java.time.OffsetDateTime;

/**
 * One revision of a record: the case as it stood and what was computed from it. A pure function of it gives the objects.
 *
 * @param revision from 1, rising with every amendment
 * @param time of the revision: the signature's, or for a draft the time it was made; the only clock of its objects
 * @param begun time of the record's first revision: its series began then, and say so in every revision
 */
public record RecordRevision(
        String caseId,
        int revision,
        CaseDocument document,
        Comparison comparison,
        OffsetDateTime time,
        OffsetDateTime begun) {
    /** A first revision, which begins the record's series. */
    public RecordRevision(
            String caseId, int revision, CaseDocument document, Comparison comparison, OffsetDateTime time) {
        this(caseId, revision, document, comparison, time, time);
    }

    public boolean signed() {
        return document.signature().isPresent();
    }
}
