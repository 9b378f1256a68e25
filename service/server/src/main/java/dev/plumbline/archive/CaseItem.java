// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import dev.plumbline.document.CasePart;
import java.time.Instant;

/**
 * Something appended to a case after it was opened; never changed.
 *
 * @param id given by the client
 * @param content canonical JSON of the item; {@code null} in JSON takes a part back
 * @param received when, by our clock
 */
public record CaseItem(String caseId, CasePart part, String id, String content, Instant received) {}
