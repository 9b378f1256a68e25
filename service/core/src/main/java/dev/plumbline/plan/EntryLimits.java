// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.Gradient;
import dev.plumbline.geometry.Spot;
import dev.plumbline.plan.Limit.Kind;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoublePredicate;
import org.apache.commons.math3.RealFieldElement;

/**
 * Which entries each limit allows. Boundaries are allowed.
 *
 * <p>Entries are in millimetres along the skin line from the probe frame's origin; considered are those whose path makes 5
 * to 90 degrees with the skin line.
 */
final class EntryLimits {
    /**
     * One limit.
     *
     * @param allows judges any entry
     * @param allowed the considered entries it allows
     */
    private record Rule(Limit limit, DoublePredicate allows, Intervals allowed) {
        boolean breaks(double entry) {
            return !allowed.holds(entry) && !allows.test(entry);
        }
    }

    private final InPlaneScene<Gradient> scene;
    private final InPlanePlan.Interval considered;
    private final List<Rule> rules = new ArrayList<>();
    private final List<Limit> unchecked = new ArrayList<>();

    EntryLimits(InPlaneScene<Gradient> scene) {
        this.scene = scene;
        considered = new InPlanePlan.Interval(scene.targetSpot().u(), farthest());
        footprint();
        reach();
        leadIn();
        structures();
    }

    /** The entry at the shallowest angle; on a round limb the skin may end before. */
    private double farthest() {
        OptionalDouble entry = entryAt(Angles.SHALLOWEST_DEG);
        return entry.isPresent() ? entry.getAsDouble() : scene.skin().end();
    }

    /** The entry whose path makes this angle with the skin line; empty where none does. */
    OptionalDouble entryAt(double degrees) {
        return InPlanePath.find(scene, new Decision.Angle(Math.toRadians(degrees)))
                .map(path -> OptionalDouble.of(path.entryAlong()))
                .orElse(OptionalDouble.empty());
    }

    double angleAt(double entry) {
        return InPlanePath.atEntry(scene, entry).degrees();
    }

    /** Limits that could not be judged because something was not stated or lies outside the patient. */
    List<Limit> unchecked() {
        return unchecked;
    }

    /** Entries within every limit. */
    Intervals feasible() {
        return without(Optional.empty());
    }

    /** Entries within every limit but one. */
    Intervals without(Optional<Limit> left) {
        Intervals common = everything();
        for (Rule rule : rules) {
            if (!left.equals(Optional.of(rule.limit))) {
                common = common.and(rule.allowed);
            }
        }
        return common;
    }

    private Intervals everything() {
        return Intervals.of(considered.low(), considered.high());
    }

    /** The considered entries whose angle lies in the band. */
    Intervals inBand(Constraints.Band band) {
        OptionalDouble steepest = entryAt(band.highDeg());
        OptionalDouble flattest = entryAt(band.lowDeg());
        return steepest.isEmpty()
                ? Intervals.NONE
                : Intervals.of(steepest.getAsDouble(), flattest.orElse(considered.high()));
    }

    /**
     * The limits that leave no entry: each whose removal alone would leave some; if there is no such one, all that forbid
     * any entry considered.
     */
    List<Limit> binding() {
        List<Limit> alone = rules.stream()
                .map(Rule::limit)
                .filter(limit -> !without(Optional.of(limit)).isEmpty())
                .toList();
        return alone.isEmpty()
                ? rules.stream()
                        .filter(rule -> !rule.allowed.equals(everything()))
                        .map(Rule::limit)
                        .toList()
                : alone;
    }

    /** The limits a path breaks; an entry on a boundary breaks none. */
    <T extends RealFieldElement<T>> List<Limit> brokenBy(InPlanePath<T> path) {
        List<Limit> broken = new ArrayList<>();
        for (Rule rule : rules) {
            if (rule.breaks(path.entryAlong())) {
                broken.add(rule.limit);
            }
        }
        return List.copyOf(broken);
    }

    /** The entries that also keep a distance from every hazard, or the target's own clearance where that is less. */
    Intervals keepingFromHazards(Intervals entries, double distance) {
        Intervals common = entries;
        for (MeasuredObstacle<Gradient> hazard : scene.obstacles().hazards()) {
            if (!common.isEmpty()) {
                InPlanePlan.Interval left = new InPlanePlan.Interval(common.least(), common.greatest());
                common = common.and(blocked(scene.limits().overshootMm(), left)
                        .keeping(hazard.nominal(), limitedByTarget(hazard.nominal(), distance)));
            }
        }
        return common;
    }

    /** Least distance of path and extension from any hazard, mm; infinite without hazards. */
    double leastClearance(double entry) {
        BlockedEntries blocked = blocked(scene.limits().overshootMm());
        double least = Double.POSITIVE_INFINITY;
        for (MeasuredObstacle<Gradient> hazard : scene.obstacles().hazards()) {
            least = blocked.lesserClearance(hazard.nominal(), entry, least);
        }
        return least;
    }

    private BlockedEntries blocked(double overshoot) {
        return blocked(overshoot, considered);
    }

    private BlockedEntries blocked(double overshoot, InPlanePlan.Interval among) {
        return new BlockedEntries(scene.skin(), scene.targetSpot(), overshoot, among);
    }

    /** A path cannot keep more distance than its target has. */
    private double limitedByTarget(Obstacle obstacle, double distance) {
        Spot target = scene.targetSpot();
        return Math.min(distance, Math.max(0, obstacle.clearance(target, target)));
    }

    private void add(Kind kind, DoublePredicate allows, Intervals allowed) {
        add(Limit.of(kind), allows, allowed);
    }

    private void add(Limit limit, DoublePredicate allows, Intervals allowed) {
        rules.add(new Rule(limit, allows, everything().and(allowed)));
    }

    private void footprint() {
        OptionalDouble edge = scene.probeEdge();
        if (edge.isEmpty() || !scene.midpointKnown()) {
            unchecked.add(Limit.of(Kind.FOOTPRINT));
            return;
        }
        double nearest = edge.getAsDouble() + scene.limits().footprintClearanceMm();
        DoublePredicate outside = entry -> entry >= nearest - Intervals.TOLERANCE_MM;
        Intervals beyondEdge = Intervals.of(nearest, Double.POSITIVE_INFINITY);
        Optional<Obstacle> face = scene.curvedFace();
        if (face.isEmpty()) {
            add(Kind.FOOTPRINT, outside, beyondEdge);
            return;
        }
        BlockedEntries onTheWay = blocked(0);
        add(
                Kind.FOOTPRINT,
                outside.and(entry -> onTheWay.keeps(face.get(), 0, entry)),
                beyondEdge.and(onTheWay.keeping(face.get(), 0)));
    }

    /** {@code path + reserve <= needle length}, so that the entry lies within a circle about the target. */
    private void reach() {
        OptionalDouble needle = scene.input().needle().lengthMm();
        if (needle.isEmpty()) {
            unchecked.add(Limit.of(Kind.REACH));
            return;
        }
        double longest = needle.getAsDouble() - scene.limits().reserveMm();
        DoublePredicate allows =
                entry -> InPlanePath.atEntry(scene, entry).length().getReal() <= longest + Intervals.TOLERANCE_MM;
        List<Double> events = longest < 0 ? List.of() : scene.skin().crossings(scene.targetSpot(), longest);
        add(Kind.REACH, allows, blocked(0).between(events, allows));
    }

    private void leadIn() {
        OptionalDouble most = scene.limits().leadInMaxMm();
        if (most.isEmpty()) {
            return;
        }
        if (leadInAt(considered.low()).isEmpty()) {
            unchecked.add(Limit.of(Kind.LEAD_IN));
            return;
        }
        DoublePredicate allows = entry -> leadInAt(entry).orElseThrow() <= most.getAsDouble() + Intervals.TOLERANCE_MM;
        add(Kind.LEAD_IN, allows, Roots.allowed(allows, considered.low(), considered.high()));
    }

    private OptionalDouble leadInAt(double entry) {
        return FirstSight.of(InPlanePath.atEntry(scene, entry))
                .leadIn()
                .map(length -> OptionalDouble.of(length.getReal()))
                .orElse(OptionalDouble.empty());
    }

    private void structures() {
        BlockedEntries onTheWay = blocked(0);
        for (MeasuredObstacle<Gradient> nerve : scene.obstacles().nerves()) {
            keep(Kind.NERVE, nerve.nominal(), 0, onTheWay);
        }
        BlockedEntries withExtension = blocked(scene.limits().overshootMm());
        for (MeasuredObstacle<Gradient> hazard : scene.obstacles().hazards()) {
            double margin = limitedByTarget(
                    hazard.nominal(), scene.marginOf(hazard.nominal().name()));
            keep(Kind.HAZARD, hazard.nominal(), margin, withExtension);
        }
        scene.obstacles().ignored().forEach(name -> unchecked.add(new Limit(Kind.HAZARD, Optional.of(name))));
    }

    private void keep(Kind kind, Obstacle obstacle, double distance, BlockedEntries blocked) {
        add(
                new Limit(kind, Optional.of(obstacle.name())),
                entry -> blocked.keeps(obstacle, distance, entry),
                blocked.keeping(obstacle, distance));
    }
}
