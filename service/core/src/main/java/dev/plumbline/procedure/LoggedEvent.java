// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.procedure;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.time.OffsetDateTime;

/**
 * An entry of the log.
 *
 * @param id given by the client, so that resending is harmless
 * @param happenedAt when it happened, by the clock of whoever entered it; of a correction, when the corrected thing happened
 * @param enteredAt when it was entered, by the same clock
 * @param enteredLater not while it happened, but afterwards
 */
public record LoggedEvent(
        String id,
        Happening what,
        OffsetDateTime happenedAt,
        OffsetDateTime enteredAt,
        String enteredBy,
        boolean enteredLater) {
    /**
     * Checks times and names.
     *
     * @throws Refusal for an event that happened after it was entered, or without id or name
     */
    public LoggedEvent {
        if (id.isBlank()) {
            throw new Refusal(new Problem.MissingField("/id", "Give every event an id of its own."));
        }
        if (enteredBy.isBlank()) {
            throw new Refusal(new Problem.MissingField("/enteredBy", "Say who entered it."));
        }
        if (happenedAt.isAfter(enteredAt)) {
            throw new Refusal(new Problem.InvalidValue(
                    "/happenedAt",
                    "This event happened after it was entered.",
                    "Give a time up to that of the entry."));
        }
    }
}
