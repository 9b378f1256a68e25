// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

/**
 * What a record is found by, and what a list says of it; made from the record alone, so that it can be made again.
 *
 * @param moment microseconds since 1970
 * @param date of the record by its own offset, such as {@code 2026-01-05}
 * @param operator in lower case
 * @param differs an observation differs from the plan by more than the uncertainty
 * @param content JSON object of everything a list says
 */
public record RecordRow(
        String reportUid,
        long moment,
        String date,
        String patientId,
        String block,
        String laterality,
        String operator,
        boolean differs,
        String content) {}
