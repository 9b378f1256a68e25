// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import java.time.Instant;

/**
 * A case as it was opened.
 *
 * @param document canonical JSON of the case document
 * @param session name of its sitting; blank where it names none
 * @param created when it was first kept
 */
public record StoredCase(String caseId, String document, String session, Instant created) {
    /** A case of no session. */
    public StoredCase(String caseId, String document, Instant created) {
        this(caseId, document, "", created);
    }
}
