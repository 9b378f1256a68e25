// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.procedure;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Events in the order they came in. Nothing is ever changed or taken out: a correction is a new event that names the old one.
 */
public final class ProcedureLog {
    /** How far in the future of our clock an entry may be, for clocks that differ; design choice. */
    public static final Duration CLOCK_TOLERANCE = Duration.ofMinutes(5);

    public static final ProcedureLog EMPTY = new ProcedureLog(List.of());

    private final List<LoggedEvent> events;

    private ProcedureLog(List<LoggedEvent> events) {
        this.events = List.copyOf(events);
    }

    /** A log as it was stored, without judging times again. */
    public static ProcedureLog stored(List<LoggedEvent> events) {
        ProcedureLog log = EMPTY;
        for (LoggedEvent event : events) {
            log = log.appended(event);
        }
        return log;
    }

    /**
     * The log with one more event; the same log when the very event is there already.
     *
     * @param receivedAt by our own clock
     * @throws Refusal for an event of the future, the same id with other content, or a correction of nothing
     */
    public ProcedureLog append(LoggedEvent event, OffsetDateTime receivedAt) {
        if (event.happenedAt().isAfter(receivedAt.plus(CLOCK_TOLERANCE))) {
            throw new Refusal(new Problem.InvalidValue(
                    "/happenedAt",
                    "This event lies in the future of the service's clock.",
                    "Check the clock of the tablet and the date."));
        }
        return appended(event);
    }

    private ProcedureLog appended(LoggedEvent event) {
        Optional<LoggedEvent> there = event(event.id());
        if (there.isPresent()) {
            if (there.get().equals(event)) {
                return this;
            }
            throw new Refusal(new Problem.Conflict(
                    "/id",
                    "Another event has this id already.",
                    "Send a new event with a new id; to change an entry, send a correction."));
        }
        if (event.what() instanceof Happening.Correction correction) {
            check(correction);
        }
        List<LoggedEvent> more = new ArrayList<>(events);
        more.add(event);
        return new ProcedureLog(more);
    }

    private void check(Happening.Correction correction) {
        if (event(correction.corrects()).isEmpty()) {
            throw new Refusal(new Problem.InvalidValue(
                    "/corrects", "The log holds no such event.", "Give the id of an event of this case."));
        }
        if (struck().contains(correction.corrects())) {
            throw new Refusal(new Problem.Conflict(
                    "/corrects", "This event is corrected already.", "Send a correction of that correction instead."));
        }
    }

    /** Everything, in the order it came in. */
    public List<LoggedEvent> events() {
        return events;
    }

    public Optional<LoggedEvent> event(String id) {
        return events.stream().filter(event -> event.id().equals(id)).findFirst();
    }

    /**
     * What stands after all corrections, in the order it happened (for equal times, in the order it was entered). What
     * stands in the place of an event carries the id, times and names of its correction. A correction that is itself
     * corrected by nothing gives back what it had replaced.
     */
    public List<LoggedEvent> standing() {
        Set<String> struck = struck();
        return events.stream()
                .filter(event -> !struck.contains(event.id()))
                .flatMap(event -> asItStands(event).stream())
                .sorted(Comparator.comparing(event -> event.happenedAt().toInstant()))
                .toList();
    }

    private static Optional<LoggedEvent> asItStands(LoggedEvent event) {
        if (!(event.what() instanceof Happening.Correction correction)) {
            return Optional.of(event);
        }
        return correction
                .instead()
                .map(what -> new LoggedEvent(
                        event.id(),
                        what,
                        event.happenedAt(),
                        event.enteredAt(),
                        event.enteredBy(),
                        event.enteredLater()));
    }

    /** Ids that no longer stand. The last word is heard first, because it may strike an earlier correction. */
    private Set<String> struck() {
        Set<String> struck = new HashSet<>();
        for (int at = events.size() - 1; at >= 0; at--) {
            LoggedEvent event = events.get(at);
            if (!struck.contains(event.id()) && event.what() instanceof Happening.Correction correction) {
                strike(correction, struck);
            }
        }
        return struck;
    }

    /** A correction with something in place of a correction also keeps that one's victim struck. */
    private void strike(Happening.Correction correction, Set<String> struck) {
        struck.add(correction.corrects());
        Optional<LoggedEvent> target = event(correction.corrects());
        if (correction.instead().isPresent()
                && target.isPresent()
                && target.get().what() instanceof Happening.Correction earlier) {
            strike(earlier, struck);
        }
    }

    /** How far the clock that entered an event differs from ours, as shown; nothing is corrected with it. */
    public static Duration clockDifference(LoggedEvent event, OffsetDateTime receivedAt) {
        return Duration.between(receivedAt, event.enteredAt());
    }
}
