// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.procedure;

import java.time.Duration;
import java.util.Optional;

/** Adds up the times between pairs of events, and knows when it cannot. */
final class Stopwatch {
    private Optional<LoggedEvent> running = Optional.empty();
    private Duration sum = Duration.ZERO;
    private boolean used;
    private boolean known = true;

    /** A start while running leaves the first one without its end. */
    void start(LoggedEvent event) {
        if (running.isPresent()) {
            known = false;
        }
        begin(event);
    }

    void startIfStopped(LoggedEvent event) {
        if (running.isEmpty()) {
            begin(event);
        }
    }

    private void begin(LoggedEvent event) {
        running = Optional.of(event);
        used = true;
    }

    /** An end without a start is not known. */
    void stop(LoggedEvent event) {
        if (running.isEmpty()) {
            known = false;
        }
        stopIfRunning(event);
    }

    void stopIfRunning(LoggedEvent event) {
        running.ifPresent(started -> {
            if (started.enteredLater() || event.enteredLater()) {
                known = false;
            }
            sum = sum.plus(Duration.between(started.happenedAt(), event.happenedAt()));
        });
        running = Optional.empty();
    }

    /** What was taken; not known when nothing was, or when something has no end. */
    Elapsed read() {
        return used ? readOrNothing() : Elapsed.notLoggedLive();
    }

    /** What was taken, which may be nothing. */
    Elapsed readOrNothing() {
        return known && running.isEmpty() ? new Elapsed.Known(sum) : Elapsed.notLoggedLive();
    }
}
