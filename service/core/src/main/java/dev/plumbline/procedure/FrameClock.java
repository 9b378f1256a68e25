// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.procedure;

import java.time.Duration;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Optional;

/**
 * When a frame was saved by the scanner's own clock, held against the log. Differences are shown, nothing is corrected.
 *
 * @param frame which of the case's frames: {@code plan} or the observation's id
 * @param acquired on the scanner's wall
 * @param zone where the frame states one; else the log's is taken
 */
public record FrameClock(String frame, LocalDateTime acquired, Optional<ZoneOffset> zone) {
    /** From the first puncture that stands in the log to the saving of the frame; empty while there is none. */
    public Optional<Duration> sincePuncture(ProcedureLog log) {
        return puncture(log).map(at -> Duration.between(at, acquired.atOffset(zone.orElse(at.getOffset()))));
    }

    private static Optional<OffsetDateTime> puncture(ProcedureLog log) {
        return log.standing().stream()
                .filter(event -> event.what() instanceof Happening.Puncture)
                .map(LoggedEvent::happenedAt)
                .min(OffsetDateTime::compareTo);
    }
}
