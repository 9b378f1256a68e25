// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoublePredicate;

/** A set of entries: closed intervals on the skin line in millimetres, ascending, apart from one another. */
record Intervals(List<InPlanePlan.Interval> parts) {
    /** What two limits that meet in one point may disagree by through rounding. */
    static final double TOLERANCE_MM = 1e-9;

    static final Intervals NONE = new Intervals(List.of());

    Intervals {
        parts = List.copyOf(parts);
    }

    /** Empty when {@code low} lies above {@code high} by more than rounding. */
    static Intervals of(double low, double high) {
        if (low > high + TOLERANCE_MM) {
            return NONE;
        }
        return new Intervals(List.of(new InPlanePlan.Interval(low, Math.max(low, high))));
    }

    /**
     * From pieces within which an answer does not change: a piece counts when its middle does, a point between two pieces
     * that do not when it does itself.
     *
     * @param cuts ascending, two or more, or one where low and high are the same
     */
    static Intervals ofPieces(double[] cuts, DoublePredicate allowed) {
        List<InPlanePlan.Interval> parts = new ArrayList<>();
        boolean open = false;
        for (int i = 0; i < cuts.length; i++) {
            boolean next = i + 1 < cuts.length && allowed.test((cuts[i] + cuts[i + 1]) / 2);
            if (next && !open) {
                parts.add(new InPlanePlan.Interval(cuts[i], cuts[i]));
            } else if (!next && !open && allowed.test(cuts[i])) {
                parts.add(new InPlanePlan.Interval(cuts[i], cuts[i]));
            }
            open = next;
            if (next) {
                double low = parts.remove(parts.size() - 1).low();
                parts.add(new InPlanePlan.Interval(low, cuts[i + 1]));
            }
        }
        return new Intervals(parts);
    }

    Intervals and(Intervals other) {
        List<InPlanePlan.Interval> common = new ArrayList<>();
        for (InPlanePlan.Interval a : parts) {
            for (InPlanePlan.Interval b : other.parts) {
                common.addAll(of(Math.max(a.low(), b.low()), Math.min(a.high(), b.high())).parts);
            }
        }
        return new Intervals(common);
    }

    boolean isEmpty() {
        return parts.isEmpty();
    }

    boolean holds(double entry) {
        return parts.stream().anyMatch(p -> p.low() - TOLERANCE_MM <= entry && entry <= p.high() + TOLERANCE_MM);
    }

    double least() {
        return parts.get(0).low();
    }

    double greatest() {
        return parts.get(parts.size() - 1).high();
    }

    /** The nearest member at or beyond an entry. */
    OptionalDouble nextFrom(double entry) {
        return parts.stream()
                .filter(p -> p.high() >= entry - TOLERANCE_MM)
                .mapToDouble(p -> Math.max(p.low(), entry))
                .findFirst();
    }

    /** The nearest member at or before an entry. */
    OptionalDouble lastUpTo(double entry) {
        return parts.stream()
                .filter(p -> p.low() <= entry + TOLERANCE_MM)
                .mapToDouble(p -> Math.min(p.high(), entry))
                .max();
    }
}
