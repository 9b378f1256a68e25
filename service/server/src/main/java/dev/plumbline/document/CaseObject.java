// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import java.util.List;

/** The objects of the case document with every field name each one knows; the schema lists the same names (tested). */
enum CaseObject {
    CASE(
            "schema",
            "caseId",
            "approach",
            "frame",
            "probe",
            "marks",
            "needle",
            "intent",
            "constraints",
            "uncertainty",
            "observations",
            "context",
            "signature"),
    FRAME("file", "sopInstanceUid", "frameNumber", "scale", "columns", "rows", "mmPerColumn", "mmPerRow"),
    SCALE("from", "to", "distanceMm"),
    POINT("column", "row"),
    PROBE(
            "kind",
            "footprintMm",
            "midpoint",
            "needleSide",
            "beamThicknessMm",
            "skinBeyondProbe",
            "housingLengthMm",
            "housingHalfThicknessMm",
            "imageInverted"),
    SKIN_BEYOND_PROBE("radiusMm", "dropMm", "atMm"),
    MARKS("target", "targetKind", "nerves", "skin", "hazards"),
    NERVE("name", "disc", "outline"),
    HAZARD("name", "kind", "marginMm", "disc", "outline"),
    DISC("center", "radiusMm"),
    NEEDLE("gauge", "lengthMm", "echogenic"),
    INTENT("entryDistanceMm", "angleToSkinDeg", "entry", "punctureDistanceMm"),
    CONSTRAINTS(
            "angleBandDeg",
            "footprintClearanceMm",
            "entryAtProbeEdge",
            "reserveMm",
            "cautionWithinMm",
            "overshootMm",
            "leadInMaxMm",
            "heelInMaxDeg",
            "prefer",
            "outOfPlaneAngleDeg",
            "maxPunctureDistanceMm",
            "steepPunctureDistanceMm"),
    UNCERTAINTY("markPx", "scaleRelative", "scannerTolerance"),
    SCANNER_TOLERANCE("mm", "percent"),
    OBSERVATION("id", "phase", "frame", "shaft", "tip", "tipIsTip", "midpoint", "target", "skin", "punctureDistanceMm"),
    CONTEXT("block", "laterality", "operator"),
    PERSON("name", "role"),
    SIGNATURE("name", "organization", "role", "time");

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> fields;

    CaseObject(String... fields) {
        this.fields = List.of(fields);
    }

    List<String> fields() {
        return fields;
    }
}
