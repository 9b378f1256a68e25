// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.Quantities;
import dev.plumbline.geometry.Reason;
import dev.plumbline.plan.Limit.Kind;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.math3.RealFieldElement;

/**
 * The two paths of an out-of-plane plan: at the usual angle, and steeply from a short distance.
 *
 * <p>That the steep one is taken when the usual one would start farther than 30 mm away or needs too long a needle, from 15
 * mm and for targets deeper than that, is common practice, no source.
 */
final class OutOfPlaneRows<T extends RealFieldElement<T>> {
    private final PlanInput input;
    private final Constraints.Limits limits;
    private final T depth;

    OutOfPlaneRows(PlanInput input, T depth) {
        this.input = input;
        this.limits = input.constraints().limits();
        this.depth = depth;
    }

    /** The angle exact. */
    OutOfPlanePath<T> usual() {
        return OutOfPlanePath.atAngle(Math.toRadians(limits.outOfPlaneAngleDeg()), depth);
    }

    /** The distance exact. */
    OutOfPlanePath<T> steep() {
        return from(limits.steepPunctureDistanceMm());
    }

    OutOfPlanePath<T> from(double distance) {
        return OutOfPlanePath.from(depth.getField().getZero().add(distance), depth);
    }

    /** Whether the steep row is to be taken instead of the usual one. */
    boolean steepTaken() {
        List<Limit> broken = brokenBy(usual());
        return (broken.contains(Limit.of(Kind.PUNCTURE_DISTANCE)) || broken.contains(Limit.of(Kind.REACH)))
                && depth.getReal() > limits.steepPunctureDistanceMm();
    }

    /** The path that is proposed, its distance exact because it is a decision; empty when it breaks a limit. */
    Optional<OutOfPlanePath<T>> proposed() {
        OutOfPlanePath<T> chosen =
                steepTaken() ? steep() : from(usual().distance().getReal());
        return brokenBy(chosen).isEmpty() ? Optional.of(chosen) : Optional.empty();
    }

    List<Limit> brokenBy(OutOfPlanePath<T> path) {
        List<Limit> broken = new ArrayList<>();
        OptionalDouble nearest = nearestForHousing();
        if (nearest.isPresent() && path.distance().getReal() < nearest.getAsDouble() - Intervals.TOLERANCE_MM) {
            broken.add(Limit.of(Kind.HOUSING));
        }
        if (path.distance().getReal() > limits.maxPunctureDistanceMm() + Intervals.TOLERANCE_MM) {
            broken.add(Limit.of(Kind.PUNCTURE_DISTANCE));
        }
        OptionalDouble needle = input.needle().lengthMm();
        if (needle.isPresent()
                && path.length().getReal() + limits.reserveMm() > needle.getAsDouble() + Intervals.TOLERANCE_MM) {
            broken.add(Limit.of(Kind.REACH));
        }
        return broken;
    }

    /** The farthest puncture nearer than a path's that fits every limit; empty where there is none or the path fits. */
    Optional<OutOfPlanePath<T>> nearer(OutOfPlanePath<T> path) {
        double most = Math.min(path.distance().getReal(), limits.maxPunctureDistanceMm());
        OptionalDouble needle = input.needle().lengthMm();
        if (needle.isPresent()) {
            double longest = needle.getAsDouble() - limits.reserveMm();
            double spare = (longest - depth.getReal()) * (longest + depth.getReal());
            most = longest <= 0 || spare <= 0 ? 0 : Math.min(most, Math.sqrt(spare));
        }
        boolean isNearer = 0 < most && most < path.distance().getReal();
        return isNearer
                ? Optional.of(from(most)).filter(found -> brokenBy(found).isEmpty())
                : Optional.empty();
    }

    /** Nearest puncture that the housing leaves room for, mm from the beam plane. */
    OptionalDouble nearestForHousing() {
        OptionalDouble half = input.probe().housingHalfThicknessMm();
        return half.isPresent()
                ? OptionalDouble.of(half.getAsDouble() + limits.footprintClearanceMm())
                : OptionalDouble.empty();
    }

    /** Limits that could not be judged; what lies between puncture and beam was never in the image. */
    List<Limit> unchecked() {
        List<Limit> unchecked = new ArrayList<>();
        if (input.probe().housingHalfThicknessMm().isEmpty()) {
            unchecked.add(Limit.of(Kind.HOUSING));
        }
        if (input.needle().lengthMm().isEmpty()) {
            unchecked.add(Limit.of(Kind.REACH));
        }
        input.marks().nerves().forEach(nerve -> unchecked.add(new Limit(Kind.NERVE, Optional.of(nerve.name()))));
        input.marks().hazards().forEach(hazard -> unchecked.add(new Limit(Kind.HAZARD, Optional.of(hazard.name()))));
        return unchecked;
    }

    Quantities<PlanQuantity, T> row(OutOfPlanePath<T> path) {
        Quantities<PlanQuantity, T> row = new Quantities<>(PlanQuantity.class);
        row.put(PlanQuantity.PUNCTURE_DISTANCE, path.distance());
        OptionalDouble half = input.probe().housingHalfThicknessMm();
        if (half.isPresent()) {
            row.put(PlanQuantity.PUNCTURE_FROM_PROBE_EDGE, path.distance().subtract(half.getAsDouble()));
        } else {
            row.put(PlanQuantity.PUNCTURE_FROM_PROBE_EDGE, Reason.NOT_MARKED);
        }
        row.put(PlanQuantity.ANGLE_TO_SKIN, path.angle());
        row.put(PlanQuantity.PATH, path.length());
        row.put(PlanQuantity.SHORTEST_NEEDLE, path.length().add(limits.reserveMm()));
        return row;
    }
}
