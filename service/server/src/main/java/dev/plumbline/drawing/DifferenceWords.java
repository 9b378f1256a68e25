// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import dev.plumbline.deviation.DeviationQuantity;
import dev.plumbline.geometry.Reading;

/** Which way an observation differs from the plan, in words. A difference is not by itself a fault. */
final class DifferenceWords {
    static final String LARGER = "* a difference larger than the measurement's uncertainty; not by itself a fault";
    static final String NOT_LARGER = "without *: no difference that this measurement could show";

    private DifferenceWords() {}

    /** Such as "4.5° steeper than the plan". */
    static String than(DeviationQuantity quantity, Reading.Seen difference) {
        if (!difference.exceedsUncertainty()) {
            return "no difference this measurement could show";
        }
        return Wording.value(Math.abs(difference.value()), quantity) + " " + direction(quantity, difference.value())
                + " than the plan";
    }

    /** The word for the sign, as a comparative. */
    static String direction(DeviationQuantity quantity, double difference) {
        boolean more = difference > 0;
        return switch (quantity) {
            case ANGLE_TO_SKIN -> more ? "steeper" : "flatter";
            case TIP_DEPTH, CROSSING_DEPTH -> more ? "deeper" : "shallower";
            case ENTRY_DISTANCE, PUNCTURE_DISTANCE -> more ? "farther" : "nearer";
            case PATH -> more ? "longer" : "shorter";
            case ALONG_PLAN -> more ? "beyond" : "before";
            case ACROSS_PLAN -> more ? "deeper" : "shallower";
        };
    }
}
