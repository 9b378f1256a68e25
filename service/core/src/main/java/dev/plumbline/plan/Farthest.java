// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import java.util.function.DoubleUnaryOperator;

/**
 * Where a continuous function of the entry is greatest: the best of a row of entries, then narrowed down between its
 * neighbours by golden-section search. Two maxima within a 64th of equal value may be told apart wrongly, which costs less
 * than they differ by.
 */
final class Farthest {
    private static final int PARTS = 64;
    private static final int NARROWINGS = 60;
    private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;

    private Farthest() {}

    static double from(Intervals entries, DoubleUnaryOperator height) {
        double best = entries.least();
        double most = Double.NEGATIVE_INFINITY;
        for (InPlanePlan.Interval part : entries.parts()) {
            double step = (part.high() - part.low()) / PARTS;
            double start = part.low();
            double atStart = height.applyAsDouble(start);
            for (int i = 1; i <= PARTS && step > 0; i++) {
                double entry = i == PARTS ? part.high() : part.low() + i * step;
                double at = height.applyAsDouble(entry);
                start = at > atStart ? entry : start;
                atStart = Math.max(at, atStart);
            }
            double top = narrowed(height, Math.max(part.low(), start - step), Math.min(part.high(), start + step));
            double found = height.applyAsDouble(top) >= atStart ? top : start;
            if (height.applyAsDouble(found) > most) {
                best = found;
                most = height.applyAsDouble(found);
            }
        }
        return best;
    }

    private static double narrowed(DoubleUnaryOperator height, double low, double high) {
        double a = low;
        double b = high;
        for (int i = 0; i < NARROWINGS && b - a > Intervals.TOLERANCE_MM / 10; i++) {
            double left = b - GOLDEN * (b - a);
            double right = a + GOLDEN * (b - a);
            if (height.applyAsDouble(left) >= height.applyAsDouble(right)) {
                b = right;
            } else {
                a = left;
            }
        }
        return (a + b) / 2;
    }
}
