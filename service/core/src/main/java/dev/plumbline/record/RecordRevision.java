// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.record;

import dev.plumbline.deviation.Comparison;
import java.time.OffsetDateTime;

/**
 * One revision of a record: the case as it stood and what was computed from it. A pure function of it gives the objects.
 *
 * @param revision from 1, rising with every amendment
 * @param time of the revision: the signature's, or for a draft the time it was made; the only clock of its objects
 */
public record RecordRevision(
        String caseId, int revision, CaseDocument document, Comparison comparison, OffsetDateTime time) {
    public boolean signed() {
        return document.signature().isPresent();
    }
}
