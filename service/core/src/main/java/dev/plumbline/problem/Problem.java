// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.problem;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Why input is refused, in words for the person who can mend it.
 *
 * <p>{@link #pointer} is an RFC 6901 pointer into the document that was sent ("" where no field is to blame), {@link
 * #detail} says what is wrong, {@link #remedy} what to do. No text ever repeats patient data.
 */
public sealed interface Problem {
    String pointer();

    String detail();

    String remedy();

    /** The same problem of a part, said at its place in the whole document. */
    default Problem under(String prefix) {
        return movedTo(prefix + pointer());
    }

    /** The same problem at another place; one whose words name its place says them anew. */
    default Problem movedTo(String place) {
        if (this instanceof InvalidValue p) {
            String old = pointer().isEmpty() ? "" : "The field " + pointer() + " must";
            boolean named = !old.isEmpty() && p.detail.startsWith(old);
            return new InvalidValue(
                    place,
                    named
                            ? (place.isEmpty() ? "The body" : "The field " + place)
                                    + p.detail.substring(old.length() - 5)
                            : p.detail,
                    p.remedy);
        }
        if (this instanceof MissingField p) {
            return new MissingField(place, p.remedy);
        }
        if (this instanceof UnknownField p) {
            return new UnknownField(place, p.nearest, p.known);
        }
        if (this instanceof ContradictoryFields p) {
            return new ContradictoryFields(place, p.detail, p.remedy);
        }
        if (this instanceof MarkOutsideFrame p) {
            return new MarkOutsideFrame(place, p.columns, p.rows);
        }
        return this instanceof Conflict p ? new Conflict(place, p.detail, p.remedy) : this;
    }

    /** A value that breaks a rule of its own: out of range, wrong type, not finite, not one of the known words. */
    record InvalidValue(String pointer, String detail, String remedy) implements Problem {}

    /** A field without which nothing can be answered. */
    record MissingField(String pointer, String remedy) implements Problem {
        @Override
        public String detail() {
            return "The field " + pointer + " is missing.";
        }
    }

    /**
     * A field name that no version of the document knows.
     *
     * @param nearest the known name it most likely stands for
     * @param known every name that is known at this place
     */
    record UnknownField(String pointer, Optional<String> nearest, List<String> known) implements Problem {
        public UnknownField {
            known = List.copyOf(known);
        }

        @Override
        public String detail() {
            return "The field " + pointer + " is not known.";
        }

        @Override
        public String remedy() {
            return nearest.map(name -> "Did you mean \"" + name + "\"?")
                    .orElseGet(() -> "Remove it; known here: " + String.join(", ", known) + ".");
        }
    }

    /** The document is not JSON, or its schema name is not one this version reads. */
    record UnreadableDocument(String pointer, String detail, String remedy) implements Problem {}

    /** Input that is understood but not yet computed; refused so that it is never silently ignored. */
    record NotYetComputed(String pointer, String what) implements Problem {
        @Override
        public String detail() {
            return what + " cannot be taken into account by this version.";
        }

        @Override
        public String remedy() {
            return "Remove " + pointer + " if the plan may ignore it, or use a version that computes it.";
        }
    }

    /** Two marks that should define a line are closer than 2 px. */
    record MarksCoincide(String pointer) implements Problem {
        @Override
        public String detail() {
            return "The marks of " + pointer + " are closer together than 2 pixels.";
        }

        @Override
        public String remedy() {
            return "Put them farther apart along the line they stand for.";
        }
    }

    /** A mark that is not on the image. */
    record MarkOutsideFrame(String pointer, int columns, int rows) implements Problem {
        @Override
        public String detail() {
            return "The mark " + pointer + " lies outside the frame of " + columns + " x " + rows + " pixels.";
        }

        @Override
        public String remedy() {
            return "Give column 0 to " + columns + " and row 0 to " + rows + ".";
        }
    }

    /** A target that no needle can reach from the skin: on or above the skin line, inside a hazard or a nerve. */
    record TargetUnreachable(String pointer, String detail, String remedy) implements Problem {}

    /** Marks of one measurement in two regions of the frame, or in a region that carries no usable scale. */
    record OutsideMeasuringRegion(String pointer, String detail, String remedy) implements Problem {}

    /** Nothing tells how large a pixel is. */
    record FrameNotCalibrated(String pointer, String detail, String remedy) implements Problem {}

    /** The statement needs exactly one of several fields and has none or more than one. */
    record ContradictoryFields(String pointer, String detail, String remedy) implements Problem {}

    /** Bytes that are not a DICOM file, or not a whole and well-formed one. */
    record MalformedObject(String pointer, String detail, String remedy) implements Problem {}

    /** A well-formed object of a kind or encoding that is not taken. */
    record UnsupportedObject(String pointer, String detail, String remedy) implements Problem {}

    /** A frame number that the object does not have. */
    record FrameNumberOutOfRange(String pointer, int frameNumber, int frameCount) implements Problem {
        @Override
        public String detail() {
            return "Frame " + frameNumber + " does not exist; the object has " + frameCount
                    + (frameCount == 1 ? " frame." : " frames.");
        }

        @Override
        public String remedy() {
            return "Give a frame number from 1 to " + frameCount + ".";
        }
    }

    /** A case, frame, record or route that is not held here. */
    record NotHeld(String pointer, String detail, String remedy) implements Problem {}

    /** What was sent differs from what is already stored under the same identifier; the first one stands. */
    record Conflict(String pointer, String detail, String remedy) implements Problem {}

    /**
     * Order, frame and case do not agree on whose or what this is, and nobody has said which holds.
     *
     * @param items what they differ in, by the names that a resolution gives them
     */
    record OrderMismatch(List<String> items) implements Problem {
        public OrderMismatch {
            items = List.copyOf(items);
        }

        @Override
        public String pointer() {
            return "/order";
        }

        @Override
        public String detail() {
            return "The order does not agree with the frame or the case in: " + String.join(", ", items) + ".";
        }

        @Override
        public String remedy() {
            return "Check whose they are; then send the right order or frame, or say in /order/resolved for each of them"
                    + " which holds (take), by whom (by) and why (reason).";
        }
    }

    /** A record that somebody wants to sign lacks what is required, and no reason is given. */
    record Incomplete(List<Item> missing) implements Problem {
        /**
         * One thing that is missing.
         *
         * @param item id in the completeness list
         * @param text in words
         * @param pointer where in the case document it is said
         */
        public record Item(String item, String text, String pointer) {}

        public Incomplete {
            missing = List.copyOf(missing);
        }

        @Override
        public String pointer() {
            return missing.get(0).pointer();
        }

        @Override
        public String detail() {
            return missing.stream()
                    .map(item -> item.item() + " (" + item.pointer() + ")")
                    .collect(Collectors.joining(", ", "Missing for a signature: ", "."));
        }

        @Override
        public String remedy() {
            return "Say them, or give a reason for each in /signature/incompleteBecause.";
        }
    }

    /** What may be changed only by who has seen how it stands, sent without saying what was seen. */
    record PreconditionRequired(String pointer) implements Problem {
        @Override
        public String detail() {
            return "This replaces what stands, so it must say what it was made from.";
        }

        @Override
        public String remedy() {
            return "Get the case and send its ETag in If-Match.";
        }
    }

    /** The case has gone on since it was read. */
    record PreconditionFailed(String pointer) implements Problem {
        @Override
        public String detail() {
            return "The case has changed since it was read.";
        }

        @Override
        public String remedy() {
            return "Get the case again, look at what changed, and send with its new ETag.";
        }
    }

    /** The same idempotency key with another body. */
    record KeyReused(String pointer) implements Problem {
        @Override
        public String detail() {
            return "This Idempotency-Key was used before with another body.";
        }

        @Override
        public String remedy() {
            return "Send a new key with a new body, or the same body with the old key.";
        }
    }

    /** More bytes than are taken. */
    record TooLarge(String pointer, long limitBytes) implements Problem {
        @Override
        public String detail() {
            return "The body is larger than " + limitBytes + " bytes.";
        }

        @Override
        public String remedy() {
            return "Send less in one request.";
        }
    }

    /** The request itself: a method, media type or header that the route does not take. */
    record NotAcceptable(String pointer, String detail, String remedy) implements Problem {}

    /** A body in a media type or content coding that the route does not take. */
    record MediaTypeNotTaken(String pointer, String detail, String remedy) implements Problem {}

    /** A browser sends this for a page of another site, which this service does not let do anything. */
    record CrossSite(String pointer) implements Problem {
        @Override
        public String detail() {
            return "A browser sends this for a page that is not this service's own.";
        }

        @Override
        public String remedy() {
            return "Use the service's own pages, or a program that is no browser; behind a proxy pass the Host header on.";
        }
    }

    /** Something outside this request has to come back first: another system, or the store of this one. */
    record Unavailable(String pointer, String detail, String remedy) implements Problem {}

    /** The disk is too full to promise that anything more can be kept. */
    record NoRoom(String pointer, String detail, String remedy) implements Problem {}
}
