// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import java.util.function.Function;

/**
 * What was computed or read off a frame: a value with its standard uncertainty, or the reason there is none. Absence is
 * data and is reported. The {@link Measurand} beside it says what it is and in which {@link Unit}.
 */
public sealed interface Reading {
    /** Expanded uncertainty is this many standard uncertainties. Source: JCGM 100:2008, 6.2.1 and G.1.3 (k = 2). */
    double COVERAGE_FACTOR = 2;

    /** A finite value and its standard uncertainty, both in the measurand's unit. */
    record Seen(double value, double standardUncertainty) implements Reading {
        public Seen {
            if (!Double.isFinite(value) || !Double.isFinite(standardUncertainty) || standardUncertainty < 0) {
                throw new IllegalArgumentException("A reading is finite and its uncertainty not negative.");
            }
        }

        public double expandedUncertainty() {
            return COVERAGE_FACTOR * standardUncertainty;
        }

        /** Whether the value differs from zero by more than its expanded uncertainty. */
        public boolean exceedsUncertainty() {
            return Math.abs(value) > expandedUncertainty();
        }
    }

    record NotSeen(Reason reason) implements Reading {}

    static Reading notSeen(Reason reason) {
        return new NotSeen(reason);
    }

    default <R> R fold(Function<Seen, R> seen, Function<NotSeen, R> notSeen) {
        return this instanceof Seen s ? seen.apply(s) : notSeen.apply((NotSeen) this);
    }
}
