// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.plan.Constraints.Preference;
import java.util.Comparator;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;

/**
 * Which entry is proposed among those within the limits.
 *
 * <p>Of those that also keep the caution distance from every hazard, one in the working band if possible, else the nearest
 * to it; there the flattest, or the steepest where a short path is preferred. If none keeps the caution distance: the entry,
 * in the band if possible, whose least hazard clearance is greatest. The rule is a design choice, no source.
 *
 * @param best of the entries within the limits: those in the band, or all where none is in the band
 */
record EntryChoice(Intervals feasible, Intervals best, OptionalDouble proposed) {
    static EntryChoice among(Intervals feasible, EntryLimits limits, Constraints.Limits set) {
        if (feasible.isEmpty()) {
            return new EntryChoice(feasible, feasible, OptionalDouble.empty());
        }
        Intervals band = limits.inBand(set.angleBand());
        Intervals inBand = feasible.and(band);
        Intervals best = inBand.isEmpty() ? feasible : inBand;
        Intervals cautious = limits.keepingFromHazards(feasible, set.cautionWithinMm());
        double entry;
        if (cautious.isEmpty()) {
            entry = Farthest.from(best, limits::leastClearance);
        } else if (cautious.and(band).isEmpty()) {
            entry = nearest(cautious, limits, set);
        } else {
            Intervals preferred = cautious.and(band);
            entry = set.prefer() == Preference.VISIBILITY ? preferred.greatest() : preferred.least();
        }
        return new EntryChoice(feasible, best, OptionalDouble.of(entry));
    }

    private static double nearest(Intervals entries, EntryLimits limits, Constraints.Limits set) {
        return entries.parts().stream()
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
