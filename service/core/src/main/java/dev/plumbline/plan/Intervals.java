// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

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
