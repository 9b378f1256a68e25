// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import java.time.Instant;

/**
 * A case that nobody has signed.
 *
 * @param opened when it was first kept
 * @param changed when the last of it came in
 */
public record OpenCase(String caseId, Instant opened, Instant changed) {}
