// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/** Where a continuous function changes its sign. */
final class Roots {
    /** Enough that a function with a few turns changes its sign at most once in a part (design choice). */
    private static final int PARTS = 64;

    private static final int HALVINGS = 60;

    private Roots() {}

    /** The parts of [low, high] on which the function is not above zero. */
    static Intervals notAbove(DoubleUnaryOperator function, double low, double high) {
        List<InPlanePlan.Interval> parts = new ArrayList<>();
        double start = Double.NaN;
        double before = low;
        boolean within = function.applyAsDouble(low) <= Intervals.TOLERANCE_MM;
        if (within) {
            start = low;
        }
        for (int i = 1; i <= PARTS; i++) {
            double here = i == PARTS ? high : low + (high - low) * i / PARTS;
            boolean now = function.applyAsDouble(here) <= Intervals.TOLERANCE_MM;
            if (now != within) {
                double root = crossing(function, before, here, within);
                if (now) {
                    start = root;
                } else {
                    parts.add(new InPlanePlan.Interval(start, root));
                }
            }
            within = now;
            before = here;
        }
        if (within) {
            parts.add(new InPlanePlan.Interval(start, high));
        }
        return new Intervals(parts);
    }

    /** The last point on the allowed side. */
    private static double crossing(DoubleUnaryOperator function, double low, double high, boolean lowWithin) {
        double a = low;
        double b = high;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (a + b) / 2;
            if (function.applyAsDouble(middle) <= Intervals.TOLERANCE_MM == lowWithin) {
                a = middle;
            } else {
                b = middle;
            }
        }
        return lowWithin ? a : b;
    }
}
