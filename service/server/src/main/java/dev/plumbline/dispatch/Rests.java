// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import java.time.Duration;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.LongSupplier;

/**
 * Who rests until when, on a clock that nobody sets: single records, and all of a destination. A record that fails alone
 * rests longer each time; all rest longer when the failures are not those of one record, so that one that can never go
 * does not hold up those that can.
 */
final class Rests {
    /** However long an archive asks to be left alone. Source: design choice. */
    static final Duration LONGEST_ASKED_FOR = Duration.ofHours(1);

    private final LongSupplier nanoTime;
    private final Backoff backoff;
    private final Map<Long, Rest> resting = new HashMap<>();
    private Rest all = Rest.NONE;
    private long lastToFail = Long.MIN_VALUE;

    /** Failures in a row, and until when nothing is tried. */
    private record Rest(int failures, long until) {
        static final Rest NONE = new Rest(0, Long.MIN_VALUE);
    }

    Rests(LongSupplier nanoTime, Backoff backoff) {
        this.nanoTime = nanoTime;
        this.backoff = backoff;
    }

    /** How long a record has to wait still, by itself or with all others; zero where it is due. */
    Duration left(long id) {
        Duration alone = left(rest(id));
        Duration together = leftOfAll();
        return alone.compareTo(together) > 0 ? alone : together;
    }

    /** How long all have to wait still. */
    Duration leftOfAll() {
        return left(all);
    }

    private Duration left(Rest rest) {
        if (rest.until() == Long.MIN_VALUE) {
            return Duration.ZERO;
        }
        return Duration.ofNanos(Math.max(0, rest.until() - nanoTime.getAsLong()));
    }

    private Rest rest(long id) {
        return resting.getOrDefault(id, Rest.NONE);
    }

    /** How often a record failed in a row. */
    int failures(long id) {
        return rest(id).failures();
    }

    /** Whether anything is known of a record. */
    boolean knows(long id) {
        return resting.containsKey(id);
    }

    /**
     * A record failed and rests; others go on.
     *
     * @param asked how long the archive wants to be left alone, if it says so
     */
    Duration failed(long id, Optional<Duration> asked) {
        resting.put(id, longer(rest(id), rest(id).failures() + 1, asked));
        return left(id);
    }

    /** A record failed in a way that blames the destination: both rest. */
    Duration allFailed(long id, Optional<Duration> asked) {
        boolean another = id != lastToFail || all.failures() == 0;
        lastToFail = id;
        all = longer(all, another ? all.failures() + 1 : all.failures(), asked);
        return failed(id, asked);
    }

    /** A record that failed before rests as long as after its last failure; one that did not is due. */
    void again(long id) {
        if (failures(id) > 0) {
            resting.put(id, longer(Rest.NONE, failures(id), Optional.empty()));
        }
    }

    /** The destination did what was asked of it. */
    void allWell() {
        all = Rest.NONE;
    }

    /** A record rests so long, which is no failure of anybody. */
    Duration pause(long id, Duration wait) {
        resting.put(id, new Rest(rest(id).failures(), nanoTime.getAsLong() + wait.toNanos()));
        return left(id);
    }

    /** All rest so long, which is no failure of anybody. */
    void pauseAll(Duration wait) {
        all = new Rest(all.failures(), nanoTime.getAsLong() + wait.toNanos());
    }

    /** Nothing is known of a record any more. */
    void forget(long id) {
        resting.remove(id);
    }

    /** Only these are still of interest. */
    void keep(Set<Long> ids) {
        resting.keySet().retainAll(ids);
    }

    private Rest longer(Rest before, int failures, Optional<Duration> asked) {
        Duration wait = backoff.after(failures);
        Duration least = asked.map(each -> each.compareTo(LONGEST_ASKED_FOR) > 0 ? LONGEST_ASKED_FOR : each)
                .filter(each -> each.compareTo(wait) > 0)
                .orElse(wait);
        long until = nanoTime.getAsLong() + least.toNanos();
        return new Rest(failures, Math.max(before.until(), until));
    }
}
