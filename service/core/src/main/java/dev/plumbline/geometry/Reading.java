// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import java.util.function.Function;

/**
 * What was computed or read off a frame: a value with its standard uncertainty, or the reason there is none. Absence is
 * data and is reported.
 *
 * @param <Q> {@link Angle}, {@link Length} or {@link Ratio}
 */
public sealed interface Reading<Q> {
    /** Expanded uncertainty is this many standard uncertainties. Source: JCGM 100:2008, 6.2.1 and G.1.3 (k = 2). */
    double COVERAGE_FACTOR = 2;

    /** A value and its standard uncertainty, both in the same unit. */
    record Seen<Q>(Q value, Q standardUncertainty) implements Reading<Q> {}

    record NotSeen<Q>(Reason reason) implements Reading<Q> {}

    static <Q> Reading<Q> notSeen(Reason reason) {
        return new NotSeen<>(reason);
    }

    default <R> R fold(Function<Seen<Q>, R> seen, Function<NotSeen<Q>, R> notSeen) {
        if (this instanceof Seen<Q> s) {
            return seen.apply(s);
        }
        return notSeen.apply((NotSeen<Q>) this);
    }
}
