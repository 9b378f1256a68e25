// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import java.time.Instant;

/**
 * A case as the store holds it.
 *
 * @param document canonical JSON of the case document
 * @param created when it was first kept
 */
public record StoredCase(String caseId, String document, Instant created) {}
