// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import java.time.Duration;
import java.util.function.DoubleSupplier;

/**
 * How long to wait after a failure: 5 s, doubled with each further one, at most 15 minutes, 20 % more or less, so that many
 * senders do not come back at once. Source: design choice, TRUST 3.2.
 *
 * @param chance from 0 to 1, evenly
 */
record Backoff(DoubleSupplier chance) {
    static final Duration FIRST = Duration.ofSeconds(5);
    static final Duration LONGEST = Duration.ofMinutes(15);
    private static final double JITTER = 0.2;
    private static final int MOST_DOUBLINGS = 20;

    /**
     * The wait after so many failures in a row.
     *
     * @param failures from 1
     */
    Duration after(int failures) {
        double doubled = (double) FIRST.toMillis() * Math.pow(2, Math.min(failures - 1, MOST_DOUBLINGS));
        double shaken =
                Math.min(doubled, (double) LONGEST.toMillis()) * (1 - JITTER + 2 * JITTER * chance.getAsDouble());
        return Duration.ofMillis((long) shaken);
    }
}
