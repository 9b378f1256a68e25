// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.agents;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.time.OffsetDateTime;

/** A prescriber goes on beyond the site's limit, with a reason; it goes into the record. */
public record Exceeding(String reason, String by, OffsetDateTime at) {
    /**
     * Checks that somebody gives a reason.
     *
     * @throws Refusal {@link Problem.MissingField} without a reason or a name
     */
    public Exceeding {
        if (reason.isBlank()) {
            throw new Refusal(new Problem.MissingField("/reason", "Say why the limit is exceeded."));
        }
        if (by.isBlank()) {
            throw new Refusal(new Problem.MissingField("/by", "Say who decides it."));
        }
    }
}
