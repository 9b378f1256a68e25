// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.procedure;

/**
 * An answer to a set-up check as it was entered; a later answer to the same check stands in its place.
 *
 * @param id given by the client, so that resending is harmless
 */
public record CheckEntry(String id, SetUpChecks.Answered answered) {}
