// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import java.time.Duration;
import java.time.Instant;
import java.util.List;

/**
 * When an archive is asked again to commit to an object: five times over a day, at first soon, as many archives commit at
 * night. Source: design choice, TRUST 3.3.
 */
final class CommitmentSchedule {
    private static final List<Duration> WAITS = List.of(
            Duration.ofMinutes(10),
            Duration.ofMinutes(50),
            Duration.ofHours(3),
            Duration.ofHours(8),
            Duration.ofHours(12));

    /** So often at most. */
    static final int MOST = WAITS.size();

    private CommitmentSchedule() {}

    /** How long the archive has to report. */
    static Duration after(int times) {
        return times < 1 ? Duration.ZERO : WAITS.get(Math.min(times, MOST) - 1);
    }

    /** What is left of that; a clock that was set cannot make it longer than the whole. */
    static Duration left(int times, Instant last, Instant now) {
        Duration whole = after(times);
        Duration left = whole.minus(Duration.between(last, now));
        if (left.isNegative()) {
            return Duration.ZERO;
        }
        return left.compareTo(whole) > 0 ? whole : left;
    }
}
