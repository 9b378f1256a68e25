// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import static dev.plumbline.geometry.Unit.DEGREE;
import static dev.plumbline.geometry.Unit.MILLIMETRE;
import static dev.plumbline.geometry.Unit.ONE;

import dev.plumbline.geometry.Measurand;
import dev.plumbline.geometry.Unit;

/** What a plan gives; the approach decides which apply. */
public enum PlanQuantity implements Measurand {
    /** Angle between path and the skin line under the probe, (0, 90]. */
    ANGLE_TO_SKIN("angleToSkinDeg", DEGREE),
    /** Angle between path and the skin where the needle enters. */
    ANGLE_TO_LOCAL_SKIN("angleToLocalSkinDeg", DEGREE),
    /** Entry from the probe's midpoint along the skin line, positive to the needle's side. */
    ENTRY_DISTANCE("entryDistanceMm", MILLIMETRE),
    ENTRY_FROM_PROBE_EDGE("entryFromProbeEdgeMm", MILLIMETRE),
    ENTRY_FROM_TARGET_COLUMN("entryFromTargetColumnMm", MILLIMETRE),
    /** Out-of-plane: skin distance from puncture to the beam plane. */
    PUNCTURE_DISTANCE("punctureDistanceMm", MILLIMETRE),
    PUNCTURE_FROM_PROBE_EDGE("punctureFromProbeEdgeMm", MILLIMETRE),
    /** Out-of-plane: target from the midpoint along the probe. */
    ALONG_PROBE("alongProbeMm", MILLIMETRE),
    /** Below the skin line under the probe. */
    TARGET_DEPTH("targetDepthMm", MILLIMETRE),
    /** Entry to target along the needle. */
    PATH("pathMm", MILLIMETRE),
    /** Needle inside before the beam can show it. */
    LEAD_IN("leadInMm", MILLIMETRE),
    FIRST_SEEN_DEPTH("firstSeenDepthMm", MILLIMETRE),
    SHORTEST_NEEDLE("shortestNeedleMm", MILLIMETRE),
    /** Needle left outside with the tip at the target. */
    NEEDLE_LEFT("needleLeftMm", MILLIMETRE),
    BEAM_INCIDENCE("beamIncidenceDeg", DEGREE),
    SPECULAR_RETURN("specularReturnShare", ONE),
    SIDEWAYS_TOLERANCE("sidewaysToleranceMm", MILLIMETRE),
    ROTATION_TOLERANCE("rotationToleranceDeg", DEGREE),
    /** Largest angle between shaft and beam plane at which the tip is still in the beam. */
    SHAFT_TO_PLANE("shaftToPlaneDeg", DEGREE),
    HEEL_IN("heelInDeg", DEGREE),
    /** Least clearance from any marked hazard. */
    LEAST_CLEARANCE("leastClearanceMm", MILLIMETRE);

    private final String field;
    private final Unit unit;

    PlanQuantity(String field, Unit unit) {
        this.field = field;
        this.unit = unit;
    }

    @Override
    public String field() {
        return field;
    }

    @Override
    public Unit unit() {
        return unit;
    }
}
