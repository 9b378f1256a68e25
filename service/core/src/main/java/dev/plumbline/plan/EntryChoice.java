// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.plan.Constraints.Preference;
import java.util.Comparator;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;

/**
 * Which entry is proposed among those within the limits: in the working band if possible, else nearest to it; there the
 * flattest, or the steepest where a short path is preferred.
 *
 * @param best of the entries within the limits: those in the band, or all where none is in the band
 */
record EntryChoice(Intervals feasible, Intervals best, OptionalDouble proposed) {
    static EntryChoice among(Intervals feasible, EntryLimits limits, Constraints.Limits set) {
        if (feasible.isEmpty()) {
            return new EntryChoice(feasible, feasible, OptionalDouble.empty());
        }
        Intervals inBand = feasible.and(limits.inBand(set.angleBand()));
        if (!inBand.isEmpty()) {
            double entry = set.prefer() == Preference.VISIBILITY ? inBand.greatest() : inBand.least();
            return new EntryChoice(feasible, inBand, OptionalDouble.of(entry));
        }
        return new EntryChoice(feasible, feasible, OptionalDouble.of(nearest(feasible, limits, set)));
    }

    private static double nearest(Intervals feasible, EntryLimits limits, Constraints.Limits set) {
        return feasible.parts().stream()
                .flatMapToDouble(part -> DoubleStream.of(part.low(), part.high()))
                .boxed()
                .min(Comparator.<Double>comparingDouble(entry -> outsideBand(limits.angleAt(entry), set.angleBand()))
                        .thenComparing(entry -> set.prefer() == Preference.VISIBILITY ? -entry : entry))
                .orElseThrow();
    }

    private static double outsideBand(double degrees, Constraints.Band band) {
        return Math.max(band.lowDeg() - degrees, degrees - band.highDeg());
    }
}
