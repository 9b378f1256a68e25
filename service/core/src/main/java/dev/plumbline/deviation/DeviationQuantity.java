// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.deviation;

import static dev.plumbline.geometry.Unit.DEGREE;
import static dev.plumbline.geometry.Unit.MILLIMETRE;

import dev.plumbline.geometry.Measurand;
import dev.plumbline.geometry.Unit;

/** Observation minus plan: positive is steeper, deeper, farther, longer, beyond the target, to the deeper side. */
public enum DeviationQuantity implements Measurand {
    ANGLE_TO_SKIN("angleToSkinDeg", DEGREE),
    ENTRY_DISTANCE("entryDistanceMm", MILLIMETRE),
    TIP_DEPTH("tipDepthMm", MILLIMETRE),
    PATH("pathMm", MILLIMETRE),
    ALONG_PLAN("alongPlanMm", MILLIMETRE),
    ACROSS_PLAN("acrossPlanMm", MILLIMETRE),
    PUNCTURE_DISTANCE("punctureDistanceMm", MILLIMETRE),
    CROSSING_DEPTH("crossingDepthMm", MILLIMETRE);

    private final String field;
    private final Unit unit;

    DeviationQuantity(String field, Unit unit) {
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
