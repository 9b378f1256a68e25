// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import static dev.plumbline.plan.PlanQuantity.ANGLE_TO_LOCAL_SKIN;
import static dev.plumbline.plan.PlanQuantity.ANGLE_TO_SKIN;
import static dev.plumbline.plan.PlanQuantity.BEAM_INCIDENCE;
import static dev.plumbline.plan.PlanQuantity.ENTRY_DISTANCE;
import static dev.plumbline.plan.PlanQuantity.ENTRY_FROM_PROBE_EDGE;
import static dev.plumbline.plan.PlanQuantity.ENTRY_FROM_TARGET_COLUMN;
import static dev.plumbline.plan.PlanQuantity.FIRST_SEEN_DEPTH;
import static dev.plumbline.plan.PlanQuantity.HEEL_IN;
import static dev.plumbline.plan.PlanQuantity.LEAD_IN;
import static dev.plumbline.plan.PlanQuantity.LEAST_CLEARANCE;
import static dev.plumbline.plan.PlanQuantity.NEEDLE_LEFT;
import static dev.plumbline.plan.PlanQuantity.PATH;
import static dev.plumbline.plan.PlanQuantity.ROTATION_TOLERANCE;
import static dev.plumbline.plan.PlanQuantity.SHAFT_TO_PLANE;
import static dev.plumbline.plan.PlanQuantity.SHORTEST_NEEDLE;
import static dev.plumbline.plan.PlanQuantity.SIDEWAYS_TOLERANCE;
import static dev.plumbline.plan.PlanQuantity.SPECULAR_RETURN;
import static dev.plumbline.plan.PlanQuantity.TARGET_DEPTH;

import dev.plumbline.geometry.PointMm;
import dev.plumbline.geometry.Quantities;
import dev.plumbline.geometry.Reason;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.math3.RealFieldElement;

/** What a path in the image plane gives: a row for the tables, and all of it for the plan itself. */
final class InPlaneQuantities {
    private InPlaneQuantities() {}

    /** The columns of the tables. */
    static <T extends RealFieldElement<T>> Quantities<PlanQuantity, T> row(InPlanePath<T> path) {
        Quantities<PlanQuantity, T> row = common(path, FirstSight.of(path));
        Clearances.least(path)
                .ifPresentOrElse(
                        clearance -> row.put(LEAST_CLEARANCE, clearance),
                        () -> row.put(LEAST_CLEARANCE, Reason.NOT_MARKED));
        return row;
    }

    /** What rows and plan have in common. */
    private static <T extends RealFieldElement<T>> Quantities<PlanQuantity, T> common(
            InPlanePath<T> path, FirstSight<T> sight) {
        InPlaneScene<T> scene = path.scene();
        Quantities<PlanQuantity, T> row = new Quantities<>(PlanQuantity.class);
        row.put(ANGLE_TO_SKIN, path.angle());
        row.put(PATH, path.length());
        row.put(SHORTEST_NEEDLE, path.length().add(scene.limits().reserveMm()));
        putEntry(row, path);
        putSight(row, sight);
        putBeam(row, path);
        return row;
    }

    /** Everything a plan gives for its path. */
    static <T extends RealFieldElement<T>> Quantities<PlanQuantity, T> plan(InPlanePath<T> path) {
        InPlaneScene<T> scene = path.scene();
        FirstSight<T> sight = FirstSight.of(path);
        Quantities<PlanQuantity, T> plan = common(path, sight);
        plan.put(TARGET_DEPTH, scene.target().y());
        plan.put(ENTRY_FROM_TARGET_COLUMN, path.run());
        if (!scene.skinFlat()) {
            plan.put(ANGLE_TO_LOCAL_SKIN, angleToLocalSkin(path));
        }
        sight.depth()
                .ifPresentOrElse(d -> plan.put(FIRST_SEEN_DEPTH, d), () -> plan.put(FIRST_SEEN_DEPTH, sight.why()));
        OptionalDouble needle = scene.input().needle().lengthMm();
        if (needle.isPresent()) {
            plan.put(NEEDLE_LEFT, path.length().negate().add(needle.getAsDouble()));
        } else {
            plan.put(NEEDLE_LEFT, Reason.NOT_MARKED);
        }
        plan.put(SIDEWAYS_TOLERANCE, Tolerances.sideways(scene));
        Tolerances.rotation(path)
                .ifPresentOrElse(
                        r -> plan.put(ROTATION_TOLERANCE, r), () -> plan.put(ROTATION_TOLERANCE, Reason.VERTICAL_PATH));
        Tolerances.shaftToPlane(path)
                .ifPresentOrElse(s -> plan.put(SHAFT_TO_PLANE, s), () -> plan.put(SHAFT_TO_PLANE, Reason.INFEASIBLE));
        putHeelIn(plan, path);
        return plan;
    }

    /** The skin falls away from the probe by its inclination, which adds to the angle; within (0, 90] degrees. */
    private static <T extends RealFieldElement<T>> T angleToLocalSkin(InPlanePath<T> path) {
        T sum = path.angle().add(path.scene().skin().inclinationAt(path.entry().x()));
        return sum.getReal() <= Math.PI / 2 ? sum : sum.negate().add(Math.PI);
    }

    /** What is known of a plan without any path: the target, and the reason for all that depends on the path. */
    static <T extends RealFieldElement<T>> Quantities<PlanQuantity, T> pathless(InPlaneScene<T> scene, Reason why) {
        Quantities<PlanQuantity, T> plan = new Quantities<>(PlanQuantity.class);
        putPathless(plan, why);
        if (!scene.skinFlat()) {
            plan.put(ANGLE_TO_LOCAL_SKIN, why);
        }
        plan.put(TARGET_DEPTH, scene.target().y());
        plan.put(SIDEWAYS_TOLERANCE, Tolerances.sideways(scene));
        return plan;
    }

    /** A row for an angle at which no skin is met. */
    static <T extends RealFieldElement<T>> Quantities<PlanQuantity, T> pathlessRow(T angle) {
        Quantities<PlanQuantity, T> row = new Quantities<>(PlanQuantity.class);
        row.put(ANGLE_TO_SKIN, angle);
        for (PlanQuantity quantity : new PlanQuantity[] {
            ENTRY_DISTANCE,
            ENTRY_FROM_PROBE_EDGE,
            PATH,
            LEAD_IN,
            SHORTEST_NEEDLE,
            BEAM_INCIDENCE,
            SPECULAR_RETURN,
            LEAST_CLEARANCE
        }) {
            row.put(quantity, Reason.INFEASIBLE);
        }
        return row;
    }

    static <T extends RealFieldElement<T>> void putPathless(Quantities<PlanQuantity, T> plan, Reason why) {
        for (PlanQuantity quantity : new PlanQuantity[] {
            ANGLE_TO_SKIN,
            ENTRY_DISTANCE,
            ENTRY_FROM_PROBE_EDGE,
            ENTRY_FROM_TARGET_COLUMN,
            TARGET_DEPTH,
            PATH,
            LEAD_IN,
            FIRST_SEEN_DEPTH,
            SHORTEST_NEEDLE,
            NEEDLE_LEFT,
            BEAM_INCIDENCE,
            SPECULAR_RETURN,
            SIDEWAYS_TOLERANCE,
            ROTATION_TOLERANCE,
            SHAFT_TO_PLANE,
            HEEL_IN
        }) {
            plan.put(quantity, why);
        }
    }

    private static <T extends RealFieldElement<T>> void putEntry(Quantities<PlanQuantity, T> row, InPlanePath<T> path) {
        if (!path.scene().midpointKnown()) {
            row.put(ENTRY_DISTANCE, Reason.MIDPOINT_NOT_MARKED);
            row.put(ENTRY_FROM_PROBE_EDGE, Reason.MIDPOINT_NOT_MARKED);
            return;
        }
        row.put(ENTRY_DISTANCE, path.entry().x());
        OptionalDouble edge = path.scene().probeEdge();
        if (edge.isPresent()) {
            row.put(ENTRY_FROM_PROBE_EDGE, path.entry().x().subtract(edge.getAsDouble()));
        } else {
            row.put(ENTRY_FROM_PROBE_EDGE, Reason.NOT_MARKED);
        }
    }

    private static <T extends RealFieldElement<T>> void putSight(Quantities<PlanQuantity, T> row, FirstSight<T> sight) {
        sight.leadIn().ifPresentOrElse(l -> row.put(LEAD_IN, l), () -> row.put(LEAD_IN, sight.why()));
    }

    /**
     * Angle between shaft and beam at the target: of an unsteered linear array {@code 90 - angle to the face}, of a curved
     * one against the ray from the arc's center. Source: elementary.
     */
    private static <T extends RealFieldElement<T>> Optional<T> beamIncidence(InPlanePath<T> path) {
        if (path.scene().linear()) {
            return Optional.of(path.angle().negate().add(Math.PI / 2));
        }
        return path.scene().arcCenter().map(center -> {
            PointMm<T> beam = path.scene().target().minus(center);
            PointMm<T> shaft = path.scene().target().minus(path.entry());
            return beam.along(shaft.turned()).abs().atan2(beam.along(shaft).abs());
        });
    }

    private static <T extends RealFieldElement<T>> void putBeam(Quantities<PlanQuantity, T> row, InPlanePath<T> path) {
        InPlaneScene<T> scene = path.scene();
        beamIncidence(path)
                .ifPresentOrElse(i -> row.put(BEAM_INCIDENCE, i), () -> row.put(BEAM_INCIDENCE, Reason.NOT_MARKED));
        if (!scene.linear()) {
            row.put(SPECULAR_RETURN, Reason.NOT_MARKED);
            return;
        }
        if (!scene.midpointKnown()) {
            row.put(SPECULAR_RETURN, Reason.MIDPOINT_NOT_MARKED);
        } else if (scene.halfFace().isEmpty()) {
            row.put(SPECULAR_RETURN, Reason.NOT_MARKED);
        } else {
            SpecularReturn.of(path, scene.halfFace().getAsDouble())
                    .ifPresentOrElse(
                            s -> row.put(SPECULAR_RETURN, s),
                            () -> row.put(SPECULAR_RETURN, Reason.NO_SHAFT_UNDER_FACE));
        }
    }

    /**
     * Rotating the array by phi about the midpoint of its face lowers the needle's angle to the face by phi; this is the
     * phi that brings the angle down to the band. Source: elementary; that it is done so is common practice, no source.
     */
    private static <T extends RealFieldElement<T>> void putHeelIn(
            Quantities<PlanQuantity, T> plan, InPlanePath<T> path) {
        Constraints.Limits limits = path.scene().limits();
        T excess = path.angle().subtract(Math.toRadians(limits.angleBand().highDeg()));
        if (Math.toDegrees(excess.getReal()) <= Angles.ROUNDING_DEG) {
            plan.put(HEEL_IN, path.scene().exact(0));
        } else if (Math.toDegrees(excess.getReal()) <= limits.heelInMaxDeg() + Angles.ROUNDING_DEG) {
            plan.put(HEEL_IN, excess);
        } else {
            plan.put(HEEL_IN, Reason.INFEASIBLE);
        }
    }
}
