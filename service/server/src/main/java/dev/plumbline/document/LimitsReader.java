// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import com.fasterxml.jackson.databind.JsonNode;
import dev.plumbline.geometry.InputUncertainty;
import dev.plumbline.plan.Constraints;
import java.util.List;

/** Reads the limits that were set and how well the inputs are known. */
final class LimitsReader {
    private LimitsReader() {}

    static Constraints constraints(Fields document) {
        return document.objectOr(
                "constraints", CaseObject.CONSTRAINTS, Constraints.NOTHING_STATED, LimitsReader::constraintsOf);
    }

    private static Constraints constraintsOf(Fields fields) {
        return new Constraints(
                fields.value("angleBandDeg").map(band -> band(band, fields.pointer("angleBandDeg"))),
                fields.number("footprintClearanceMm", Range.DISTANCE),
                fields.flag("entryAtProbeEdge"),
                fields.number("reserveMm", Range.DISTANCE),
                fields.number("cautionWithinMm", Range.DISTANCE),
                fields.number("overshootMm", Range.DISTANCE),
                fields.number("leadInMaxMm", Range.LENGTH),
                fields.number("heelInMaxDeg", Range.ROTATION),
                fields.word("prefer", List.of(Constraints.Preference.values()), Constraints.Preference::word),
                fields.number("outOfPlaneAngleDeg", Range.ANGLE),
                fields.number("maxPunctureDistanceMm", Range.LENGTH),
                fields.number("steepPunctureDistanceMm", Range.LENGTH));
    }

    private static Constraints.Band band(JsonNode json, String pointer) {
        String what = "two angles, the lower first, above 0 and below 90 degrees";
        if (!json.isArray() || json.size() != 2) {
            throw Fields.refusal(pointer, what);
        }
        double low = Fields.number(json.get(0), pointer + "/0", Range.ANGLE);
        double high = Fields.number(json.get(1), pointer + "/1", Range.ANGLE);
        if (low > high || high >= 90) {
            throw Fields.refusal(pointer, what);
        }
        return new Constraints.Band(low, high);
    }

    static InputUncertainty uncertainty(Fields document) {
        return document.objectOr(
                "uncertainty",
                CaseObject.UNCERTAINTY,
                InputUncertainty.NOTHING_STATED,
                fields -> new InputUncertainty(
                        fields.number("markPx", Range.MARK_SPREAD),
                        fields.number("scaleRelative", Range.SHARE),
                        fields.object("scannerTolerance", CaseObject.SCANNER_TOLERANCE)
                                .map(tolerance -> new InputUncertainty.ScannerTolerance(
                                        tolerance.needNumber("mm", Range.DISTANCE),
                                        tolerance.needNumber("percent", Range.PERCENT)))));
    }
}
