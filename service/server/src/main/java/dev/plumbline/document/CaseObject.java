// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import java.util.List;
import java.util.Set;

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
    FRAME("file", "sopInstanceUid", "frameNumber", "columns", "rows", "mmPerColumn", "mmPerRow"),
    POINT("column", "row", "repeats"),
    REPEAT("column", "row", "by"),
    PROBE(
            "kind",
            "footprintMm",
            "midpoint",
            "needleSide",
            "beamThicknessMm",
            "skinBeyondProbe",
            "housingLengthMm",
            "housingHalfThicknessMm",
            "imageInverted",
            "arcRadiusMm"),
    SKIN_BEYOND_PROBE("radiusMm", "dropMm", "atMm"),
    MARKS("target", "targetKind", "nerves", "skin", "hazards"),
    NERVE("name", "disc", "outline"),
    HAZARD("name", "kind", "marginMm", "disc", "outline"),
    DISC("center", "radiusMm"),
    NEEDLE("gauge", "lengthMm", "echogenic", "wish"),
    NEEDLE_WISH("tipTypes", "gauges", "echogenic"),
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

    @SuppressWarnings("ImmutableEnumChecker") // Set.copyOf cannot be changed
    private final Set<String> names;

    CaseObject(String... fields) {
        this.fields = List.of(fields);
        this.names = Set.copyOf(this.fields);
    }

    List<String> fields() {
        return fields;
    }

    boolean knows(String name) {
        return names.contains(name);
    }
}
