// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import dev.plumbline.deviation.DeviationQuantity;
import dev.plumbline.geometry.Measurand;
import dev.plumbline.observation.ObservationQuantity;
import dev.plumbline.plan.PlanQuantity;

/** What each quantity is called in a table. */
final class Labels {
    private Labels() {}

    static String of(Measurand measurand) {
        if (measurand instanceof PlanQuantity quantity) {
            return plan(quantity);
        }
        if (measurand instanceof ObservationQuantity quantity) {
            return observation(quantity);
        }
        return deviation((DeviationQuantity) measurand);
    }

    private static String plan(PlanQuantity quantity) {
        return switch (quantity) {
            case ANGLE_TO_SKIN -> "angle to skin";
            case ANGLE_TO_LOCAL_SKIN -> "angle to skin at entry";
            case ENTRY_DISTANCE -> "entry from midpoint";
            case ENTRY_FROM_PROBE_EDGE -> "entry from probe's edge";
            case ENTRY_FROM_TARGET_COLUMN -> "entry from above target";
            case PUNCTURE_DISTANCE -> "puncture from beam";
            case PUNCTURE_FROM_PROBE_EDGE -> "puncture from probe";
            case ALONG_PROBE -> "along the probe";
            case TARGET_DEPTH -> "target depth";
            case PATH -> "path";
            case LEAD_IN -> "lead-in";
            case FIRST_SEEN_DEPTH -> "first seen at depth";
            case SHORTEST_NEEDLE -> "shortest needle";
            case NEEDLE_LEFT -> "needle left outside";
            case BEAM_INCIDENCE -> "beam to shaft";
            case SPECULAR_RETURN -> "mirror echo, share";
            case SIDEWAYS_TOLERANCE -> "sideways tolerance";
            case ROTATION_TOLERANCE -> "rotation tolerance";
            case SHAFT_TO_PLANE -> "shaft to beam plane";
            case HEEL_IN -> "heel-in";
            case LEAST_CLEARANCE -> "least clearance";
        };
    }

    private static String observation(ObservationQuantity quantity) {
        return switch (quantity) {
            case ANGLE_TO_SKIN -> "angle to skin";
            case ENTRY_DISTANCE -> "entry from midpoint";
            case ENTRY_EXTRAPOLATED -> "entry extrapolated by";
            case DEEPEST_SEEN_DEPTH -> "deepest seen at depth";
            case SEEN_LENGTH -> "length seen";
            case TIP_DEPTH -> "tip depth";
            case CROSSING_DEPTH -> "crossing depth";
            case PUNCTURE_DISTANCE -> "puncture from beam";
            case PATH -> "path";
            case TIP_TO_TARGET -> "tip to target";
            case BOW -> "bow of the shaft";
            case ROTATION_BOUND -> "rotation at most";
        };
    }

    private static String deviation(DeviationQuantity quantity) {
        return switch (quantity) {
            case ANGLE_TO_SKIN -> "angle to skin";
            case ENTRY_DISTANCE -> "entry from midpoint";
            case TIP_DEPTH -> "tip depth";
            case PATH -> "path";
            case ALONG_PLAN -> "tip along the plan";
            case ACROSS_PLAN -> "tip across the plan";
            case PUNCTURE_DISTANCE -> "puncture from beam";
            case CROSSING_DEPTH -> "crossing depth";
        };
    }
}
