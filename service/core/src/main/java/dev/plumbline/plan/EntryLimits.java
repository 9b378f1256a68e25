// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.plan.Limit.Kind;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.math3.RealFieldElement;
import org.apache.commons.math3.util.Decimal64;

/**
 * Which entries each limit allows. Boundaries are allowed.
 *
 * <p>Entries are in millimetres along the skin line from the probe frame's origin; considered are those whose path makes 5
 * to 90 degrees with the skin line.
 */
final class EntryLimits {
    private final InPlaneScene<Decimal64> scene;
    private final Intervals considered;
    private final Map<Limit, Intervals> allowed = new LinkedHashMap<>();
    private final List<Limit> unchecked = new ArrayList<>();

    EntryLimits(InPlaneScene<Decimal64> scene) {
        this.scene = scene;
        considered = Intervals.of(entryAt(Angles.STEEPEST_DEG), entryAt(Angles.SHALLOWEST_DEG));
        footprint();
        reach();
        leadIn();
    }

    /** The entry whose path makes this angle with the skin line. */
    double entryAt(double degrees) {
        return InPlanePath.of(scene, new Decision.Angle(Math.toRadians(degrees)))
                .entry()
                .x()
                .getReal();
    }

    double angleAt(double entry) {
        return InPlanePath.of(scene, new Decision.Entry(entry)).degrees();
    }

    /** Limits that could not be judged because something was not stated. */
    List<Limit> unchecked() {
        return unchecked;
    }

    /** Entries within every limit. */
    Intervals feasible() {
        return without(Optional.empty());
    }

    /** Entries within every limit but one. */
    Intervals without(Optional<Limit> left) {
        Intervals common = considered;
        for (Map.Entry<Limit, Intervals> limit : allowed.entrySet()) {
            if (!left.equals(Optional.of(limit.getKey()))) {
                common = common.and(limit.getValue());
            }
        }
        return common;
    }

    Intervals inBand(Constraints.Band band) {
        return Intervals.of(entryAt(band.highDeg()), entryAt(band.lowDeg()));
    }

    /**
     * The limits that leave no entry: each whose removal alone would leave some; if there is no such one, all that forbid
     * any entry considered.
     */
    List<Limit> binding() {
        List<Limit> alone = allowed.keySet().stream()
                .filter(limit -> !without(Optional.of(limit)).isEmpty())
                .toList();
        return alone.isEmpty()
                ? allowed.keySet().stream()
                        .filter(limit -> !allowed(limit).equals(considered))
                        .toList()
                : alone;
    }

    private Intervals allowed(Limit limit) {
        return considered.and(allowed.getOrDefault(limit, considered));
    }

    /** The limits a path breaks; an entry on a boundary breaks none. */
    <T extends RealFieldElement<T>> List<Limit> brokenBy(InPlanePath<T> path) {
        double entry = path.entry().x().getReal();
        return allowed.entrySet().stream()
                .filter(limit -> !limit.getValue().holds(entry))
                .map(Map.Entry::getKey)
                .toList();
    }

    private void footprint() {
        Limit limit = Limit.of(Kind.FOOTPRINT);
        OptionalDouble edge = scene.probeEdge();
        if (edge.isEmpty() || !scene.midpointKnown()) {
            unchecked.add(limit);
            return;
        }
        double nearest = edge.getAsDouble() + scene.limits().footprintClearanceMm();
        allowed.put(limit, Intervals.of(nearest, Double.POSITIVE_INFINITY));
    }

    /** {@code path + reserve <= needle length}, so that the entry lies within a circle about the target. */
    private void reach() {
        Limit limit = Limit.of(Kind.REACH);
        OptionalDouble needle = scene.input().needle().lengthMm();
        if (needle.isEmpty()) {
            unchecked.add(limit);
            return;
        }
        double longest = needle.getAsDouble() - scene.limits().reserveMm();
        double depth = scene.target().y().getReal();
        // The difference of squares as a product keeps a path of just the depth when the needle just reaches it.
        double square = (longest - depth) * (longest + depth);
        double along = scene.target().x().getReal();
        if (longest < depth - Intervals.TOLERANCE_MM) {
            allowed.put(limit, Intervals.NONE);
        } else {
            double run = Math.sqrt(Math.max(0, square));
            allowed.put(limit, Intervals.of(along - run, along + run));
        }
    }

    private void leadIn() {
        OptionalDouble most = scene.limits().leadInMaxMm();
        if (most.isEmpty()) {
            return;
        }
        Limit limit = Limit.of(Kind.LEAD_IN);
        if (leadIn(considered.least()).isEmpty()) {
            unchecked.add(limit);
            return;
        }
        allowed.put(
                limit,
                Roots.notAbove(
                        entry -> leadIn(entry).orElseThrow() - most.getAsDouble(),
                        considered.least(),
                        considered.greatest()));
    }

    private OptionalDouble leadIn(double entry) {
        return FirstSight.of(InPlanePath.of(scene, new Decision.Entry(entry)))
                .leadIn()
                .map(length -> OptionalDouble.of(length.getReal()))
                .orElse(OptionalDouble.empty());
    }
}
