// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.intake;

import dev.plumbline.geometry.PointPx;
import java.util.List;
import java.util.Optional;

/**
 * Something drawn on an image by other software.
 *
 * @param at where it stands in its object, for a person who looks for it
 * @param image SOP Instance UID
 * @param frames the frame numbers it names, from 1; none where it names the image only
 * @param points pixels, (0, 0) being the outer corner of the top-left pixel
 * @param labels what is said of it, the nearest first
 * @param stated the number the other software gave
 * @param onOnlyImage it does not say on which image it is drawn, and its object names a single one
 */
public record ForeignMark(
        String at,
        String image,
        List<Integer> frames,
        Form form,
        List<PointPx> points,
        List<Label> labels,
        Optional<Stated> stated,
        boolean onOnlyImage) {
    /** A mark that says itself on which image it is drawn. */
    public ForeignMark(
            String at,
            String image,
            List<Integer> frames,
            Form form,
            List<PointPx> points,
            List<Label> labels,
            Optional<Stated> stated) {
        this(at, image, frames, form, points, labels, stated, false);
    }

    public ForeignMark {
        frames = List.copyOf(frames);
        points = List.copyOf(points);
        labels = List.copyOf(labels);
    }

    /** How the points are meant. */
    public enum Form {
        /** The first point; an arrow's head. */
        POINT("a point"),
        /** Two points. */
        LINE("a line"),
        /** More points, the last not joined to the first. */
        POLYLINE("a line of several pieces"),
        /** Three or four points, the vertex in the middle. */
        ANGLE("an angle"),
        /** Corners; the last joins the first. */
        OUTLINE("an outline"),
        /** Centre and a point on the circle. */
        CIRCLE("a circle"),
        /** Ends of the longer axis, then of the shorter one. */
        ELLIPSE("an ellipse");

        private final String words;

        Form(String words) {
            this.words = words;
        }

        /** With its article. */
        public String words() {
            return words;
        }
    }

    /**
     * Something said of a mark.
     *
     * @param kind what sort of label
     * @param text as it stands; of a code its meaning
     * @param code value and scheme, where it is coded
     */
    public record Label(Kind kind, String text, Optional<Coded> code) {
        /** A label in words only. */
        public static Label words(Kind kind, String text) {
            return new Label(kind, text, Optional.empty());
        }
    }

    /** A concept by value and coding scheme designator. */
    public record Coded(String value, String scheme) {}

    /** What sort of label. */
    public enum Kind {
        CONCEPT,
        COMMENT,
        FINDING,
        TRACKING,
        SITE,
        CONTAINER,
        TEXT
    }

    /** A number with its UCUM unit. */
    public record Stated(double value, String unit) {}

    /** The same mark with its points brought elsewhere. */
    ForeignMark with(List<PointPx> moved) {
        return new ForeignMark(at, image, frames, form, moved, labels, stated, onOnlyImage);
    }

    /**
     * What a person would call it: the nearest comment or text, else what it was known by.
     *
     * @param known the label that told its meaning
     */
    public String name(Label known) {
        return first(Kind.COMMENT).or(() -> first(Kind.TEXT)).orElse(known.text());
    }

    private Optional<String> first(Kind kind) {
        return labels.stream().filter(label -> label.kind() == kind).findFirst().map(Label::text);
    }
}
