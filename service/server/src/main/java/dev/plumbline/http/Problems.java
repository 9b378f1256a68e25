// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import dev.plumbline.problem.Problem;
import java.util.Map;

/** Which status and which name each problem has at this door; complete, which a test keeps. */
final class Problems {
    private static final String URN = "urn:plumbline:problem:";

    /** A row of the table: HTTP status (RFC 9110, 15), the last part of the type, and the title that goes with it. */
    record Row(int status, String slug, String title) {
        String type() {
            return URN + slug;
        }
    }

    static final Row UNKNOWN_ROUTE = new Row(404, "unknown-route", "There is nothing at this address");
    static final Row METHOD_NOT_ALLOWED = new Row(405, "method-not-allowed", "The address takes other methods");
    static final Row BAD_REQUEST = new Row(400, "bad-request", "The request cannot be understood");
    static final Row OUR_FAULT = new Row(500, "our-fault", "Plumbline itself failed");

    private static final Map<Class<? extends Problem>, Row> ROWS = Map.ofEntries(
            row(Problem.InvalidValue.class, 422, "invalid-value", "A field holds a value that is not taken"),
            row(Problem.MissingField.class, 422, "missing-field", "A field is missing"),
            row(Problem.UnknownField.class, 422, "unknown-field", "A field is not known"),
            row(Problem.UnreadableDocument.class, 400, "unreadable-document", "The document cannot be read"),
            row(Problem.NotYetComputed.class, 422, "not-yet-computed", "A field cannot be taken into account"),
            row(Problem.MarksCoincide.class, 422, "marks-coincide", "Two marks are too close together"),
            row(Problem.MarkOutsideFrame.class, 422, "mark-outside-frame", "A mark is not on the frame"),
            row(Problem.TargetUnreachable.class, 422, "target-unreachable", "No needle can reach the target"),
            row(
                    Problem.OutsideMeasuringRegion.class,
                    422,
                    "outside-measuring-region",
                    "Marks do not share one usable region"),
            row(Problem.FrameNotCalibrated.class, 422, "frame-not-calibrated", "The frame has no scale"),
            row(Problem.ContradictoryFields.class, 422, "contradictory-fields", "Fields contradict each other"),
            row(Problem.MalformedObject.class, 422, "malformed-object", "This is not a whole DICOM object"),
            row(Problem.UnsupportedObject.class, 422, "unsupported-object", "This kind of object is not taken"),
            row(Problem.FrameNumberOutOfRange.class, 422, "frame-number-out-of-range", "The object has no such frame"),
            row(Problem.NotHeld.class, 404, "not-held", "This is not held here"),
            row(Problem.Conflict.class, 409, "conflict", "Something else is stored in its place"),
            row(Problem.OrderMismatch.class, 409, "order-mismatch", "Order, frame and case do not agree"),
            row(Problem.Incomplete.class, 422, "incomplete", "The record lacks what a signature needs"),
            row(Problem.PreconditionRequired.class, 428, "precondition-required", "It must say what it was made from"),
            row(Problem.PreconditionFailed.class, 412, "precondition-failed", "The case has changed meanwhile"),
            row(Problem.KeyReused.class, 422, "key-reused", "The key came with another body"),
            row(Problem.TooLarge.class, 413, "too-large", "The body is too large"),
            row(Problem.NotAcceptable.class, 406, "not-acceptable", "This cannot be given as asked for"),
            row(
                    Problem.MediaTypeNotTaken.class,
                    415,
                    "media-type-not-taken",
                    "The body is in a type that is not taken"),
            row(Problem.CrossSite.class, 403, "cross-site", "The request comes from another site's page"),
            row(Problem.Unavailable.class, 503, "unavailable", "This cannot be done just now"),
            row(Problem.NoRoom.class, 507, "no-room", "There is no room to keep this"));

    private Problems() {}

    private static Map.Entry<Class<? extends Problem>, Row> row(
            Class<? extends Problem> problem, int status, String slug, String title) {
        return Map.entry(problem, new Row(status, slug, title));
    }

    static Row of(Class<? extends Problem> problem) {
        Row row = ROWS.get(problem);
        if (row == null) {
            throw new IllegalStateException(problem + " has no row in the table of problems");
        }
        return row;
    }
}
