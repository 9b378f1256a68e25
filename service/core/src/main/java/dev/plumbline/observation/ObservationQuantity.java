// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.observation;

import static dev.plumbline.geometry.Unit.DEGREE;
import static dev.plumbline.geometry.Unit.MILLIMETRE;

import dev.plumbline.geometry.Measurand;
import dev.plumbline.geometry.Unit;

/** What an observation gives; the approach decides which apply. */
public enum ObservationQuantity implements Measurand {
    /** Angle between shaft and skin line, (0, 90]. */
    ANGLE_TO_SKIN("angleToSkinDeg", DEGREE),
    /** Where the shaft line meets the skin, from the probe's midpoint, positive to the needle's side. */
    ENTRY_DISTANCE("entryDistanceMm", MILLIMETRE),
    /** From the shallowest shaft mark along the line to the entry. */
    ENTRY_EXTRAPOLATED("entryExtrapolatedMm", MILLIMETRE),
    /** Of the deepest seen part, not necessarily the tip. */
    DEEPEST_SEEN_DEPTH("deepestSeenDepthMm", MILLIMETRE),
    SEEN_LENGTH("seenLengthMm", MILLIMETRE),
    TIP_DEPTH("tipDepthMm", MILLIMETRE),
    /** Out-of-plane: where some part of the needle crosses the plane. */
    CROSSING_DEPTH("crossingDepthMm", MILLIMETRE),
    PUNCTURE_DISTANCE("punctureDistanceMm", MILLIMETRE),
    /** Entry to confirmed tip. */
    PATH("pathMm", MILLIMETRE),
    TIP_TO_TARGET("tipToTargetMm", MILLIMETRE),
    /** Largest distance of a shaft mark from the fitted line. */
    BOW("bowMm", MILLIMETRE),
    /** Upper bound of the probe's rotation against the needle, from the visible part; never a direction. */
    ROTATION_BOUND("rotationBoundDeg", DEGREE);

    private final String field;
    private final Unit unit;

    ObservationQuantity(String field, Unit unit) {
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
