// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import java.util.Arrays;
import java.util.function.DoublePredicate;
import java.util.stream.DoubleStream;

/** Where the answer of a smooth condition changes. */
final class Roots {
    /** Enough that a condition with a few turns changes its answer at most once in a part (design choice). */
    private static final int PARTS = 64;

    private static final int HALVINGS = 60;

    private Roots() {}

    /** The parts of [low, high] that are allowed, to the last bits of their bounds. */
    static Intervals allowed(DoublePredicate allows, double low, double high) {
        DoubleStream.Builder cuts = DoubleStream.builder().add(low);
        double before = low;
        for (int i = 1; i <= PARTS; i++) {
            double here = i == PARTS ? high : low + (high - low) * i / PARTS;
            if (allows.test(before) != allows.test(here)) {
                cuts.add(change(allows, before, here));
            }
            before = here;
        }
        cuts.add(high);
        return Intervals.ofPieces(
                Arrays.stream(cuts.build().toArray()).distinct().toArray(), allows);
    }

    /** The last point on the allowed side. */
    private static double change(DoublePredicate allows, double low, double high) {
        boolean lowAllowed = allows.test(low);
        double a = low;
        double b = high;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (a + b) / 2;
            if (allows.test(middle) == lowAllowed) {
                a = middle;
            } else {
                b = middle;
            }
        }
        return lowAllowed ? a : b;
    }
}
