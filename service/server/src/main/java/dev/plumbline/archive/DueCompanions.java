// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import java.time.Instant;

/**
 * A signed revision whose companions are still to be composed.
 *
 * @param since when it was signed for
 * @param words why that failed so far; blank where it was not tried
 */
public record DueCompanions(String caseId, int revision, String studyInstanceUid, Instant since, String words) {}
