// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

/**
 * A record that a query found.
 *
 * @param content JSON object of what the index says of it
 */
public record RecordListed(StoredRevision revision, String content) {}
