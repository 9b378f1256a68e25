// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.Circles;
import dev.plumbline.geometry.Gradient;
import dev.plumbline.geometry.PointMm;
import dev.plumbline.geometry.SkinCourse;
import dev.plumbline.geometry.Spot;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoublePredicate;

/**
 * Which entries keep a distance from a structure, solved exactly.
 *
 * <p>Whether a path keeps the distance can change only at entries where it is tangent to the structure inflated by that
 * distance, where the skin itself crosses the inflated structure, or where the end of the extension beyond the target does:
 * there the circle of the extension's length about the target crosses it. Between two neighbouring ones of these all
 * entries are allowed or none is, and one of them tells which. An inflated structure is a union of capsules. Source:
 * elementary.
 */
final class BlockedEntries {
    private final SkinCourse skin;
    private final Spot target;
    private final double overshoot;
    private final InPlanePlan.Interval considered;

    BlockedEntries(SkinCourse skin, Spot target, double overshoot, InPlanePlan.Interval considered) {
        this.skin = skin;
        this.target = target;
        this.overshoot = overshoot;
        this.considered = considered;
    }

    /** Entries whose path, extension included, keeps the distance; a boundary is allowed. */
    Intervals keeping(Obstacle obstacle, double distance) {
        if (beyondAnyPath(obstacle, distance)) {
            return Intervals.of(considered.low(), considered.high());
        }
        List<Double> events = new ArrayList<>();
        for (int i = 0; i < obstacle.corners().size(); i++) {
            circle(obstacle.corner(i), obstacle.radiusMm() + distance, events);
            if (!obstacle.disc()) {
                edge(obstacle.corner(i), obstacle.corner(i + 1), distance, events);
            }
        }
        return between(events, entry -> keeps(obstacle, distance, entry));
    }

    /** No path leads deeper than its extension nor farther than it on the side away from the needle. */
    private boolean beyondAnyPath(Obstacle obstacle, double distance) {
        double reach = obstacle.reachMm() + distance + overshoot;
        return obstacle.middle().w() - reach >= target.w() || obstacle.middle().u() + reach <= target.u();
    }

    /** Whether path and extension keep the distance, within rounding. */
    boolean keeps(Obstacle obstacle, double distance, double entry) {
        Spot from = entry(entry);
        return obstacle.leaves(distance - Intervals.TOLERANCE_MM, from, beyond(from));
    }

    /** The clearance of path and extension, or a lesser one that is known already. */
    double lesserClearance(Obstacle obstacle, double entry, double known) {
        Spot from = entry(entry);
        Spot to = beyond(from);
        return obstacle.leaves(known, from, to) ? known : obstacle.clearance(from, to);
    }

    private Spot entry(double along) {
        return new Spot(along, skin.depthAt(Gradient.constant(along)).getReal());
    }

    private Spot beyond(Spot from) {
        Spot way = target.minus(from);
        return target.plus(way, overshoot / way.length());
    }

    /** Entries between which an answer cannot change; the answers are tried at each and half-way between. */
    Intervals between(List<Double> events, DoublePredicate allowed) {
        double[] cuts = events.stream()
                .mapToDouble(Double::doubleValue)
                .filter(entry -> considered.low() < entry && entry < considered.high())
                .sorted()
                .toArray();
        double[] all = new double[cuts.length + 2];
        all[0] = considered.low();
        System.arraycopy(cuts, 0, all, 1, cuts.length);
        all[all.length - 1] = considered.high();
        return Intervals.ofPieces(Arrays.stream(all).distinct().toArray(), allowed);
    }

    private void circle(Spot center, double radius, List<Double> events) {
        Circles.tangents(target, center, radius).forEach(direction -> line(direction, events));
        events.addAll(skin.crossings(center, radius));
        if (overshoot > 0) {
            Circles.crossings(target, overshoot, center, radius).forEach(end -> line(end.minus(target), events));
        }
    }

    private void edge(Spot from, Spot to, double distance, List<Double> events) {
        Spot way = to.minus(from);
        if (way.length() == 0) {
            return;
        }
        line(way, events);
        Spot normal = new Spot(-way.w() / way.length(), way.u() / way.length());
        for (double side : distance == 0 ? new double[] {0} : new double[] {-distance, distance}) {
            Spot start = from.plus(normal, side);
            events.addAll(skin.crossings(start, to.plus(normal, side)));
            if (overshoot > 0) {
                for (double share : Circles.lineCrossings(start, way, target, overshoot)) {
                    line(start.plus(way, share).minus(target), events);
                }
            }
        }
    }

    /** The entry of the line through the target with this direction, either way. */
    private void line(Spot direction, List<Double> events) {
        double up = direction.w() <= 0 ? 1 : -1;
        PointMm<Gradient> upwards =
                new PointMm<>(Gradient.constant(up * direction.u()), Gradient.constant(up * direction.w()));
        PointMm<Gradient> at = new PointMm<>(Gradient.constant(target.u()), Gradient.constant(target.w()));
        skin.meets(at, upwards).ifPresent(entry -> events.add(entry.x().getReal()));
    }
}
