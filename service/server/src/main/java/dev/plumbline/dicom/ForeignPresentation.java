// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.geometry.PointPx;
import dev.plumbline.intake.ForeignMark;
import dev.plumbline.intake.ForeignMark.Form;
import dev.plumbline.intake.ForeignMark.Kind;
import dev.plumbline.intake.ForeignMark.Label;
import dev.plumbline.intake.ForeignObject;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The graphics of a presentation state of other software (DICOM PS3.3 C.10.5). A text belongs to a graphic when both stand
 * alone in one annotation, else to the nearest graphic within 20 pixels of its anchor (design choice): of its own annotation
 * first, then of the others on the same image.
 */
final class ForeignPresentation {
    private static final double NEAR_PX = 20;
    private static final int MOST_GRAPHICS = 20_000;
    private static final String PIXELS = "PIXEL";
    private static final String FRACTIONS = "DISPLAY";

    /** What is drawn on: frames of an image and the part of it that is displayed. */
    private record Sheet(String image, List<Integer> frames, Optional<DisplayedArea> area) {
        /** Whether an annotation is drawn on it; one that names no image is drawn on all. */
        boolean isUnder(DataSet annotation) {
            List<DataSet> named = annotation.items(Tag.REFERENCED_IMAGE_SEQUENCE);
            return named.isEmpty()
                    || named.stream()
                            .anyMatch(each -> each.string(Tag.REFERENCED_SOP_INSTANCE_UID)
                                            .filter(image::equals)
                                            .isPresent()
                                    && ForeignPresentation.frames(each).equals(frames));
        }
    }

    private final DataSet state;
    private int graphics;

    private ForeignPresentation(DataSet state) {
        this.state = state;
    }

    /**
     * Reads a presentation state.
     *
     * @throws dev.plumbline.problem.Refusal when a graphic is drawn neither in pixels nor in fractions of the displayed area, or there are too many
     */
    static ForeignObject read(DataSet state) {
        return new ForeignPresentation(state).read();
    }

    private ForeignObject read() {
        List<ForeignMark> marks = new ArrayList<>();
        List<DataSet> annotations = state.items(Tag.GRAPHIC_ANNOTATION_SEQUENCE);
        for (int a = 0; a < annotations.size(); a++) {
            marks.addAll(marks(annotations.get(a), "annotation " + (a + 1)));
        }
        return new ForeignObject(state.string(Tag.SOP_INSTANCE_UID).orElseThrow(), List.of(), marks);
    }

    private List<ForeignMark> marks(DataSet annotation, String place) {
        List<DataSet> objects = annotation.items(Tag.GRAPHIC_OBJECT_SEQUENCE);
        List<ForeignMark> marks = new ArrayList<>();
        for (int g = 0; g < objects.size(); g++) {
            if (++graphics > MOST_GRAPHICS) {
                throw Fault.unsupported(
                        "The presentation state has more than " + MOST_GRAPHICS + " graphics", "Send fewer.");
            }
            DataSet object = objects.get(g);
            String at = place + ", graphic " + (g + 1);
            DataSet image = image(annotation, at);
            String uid = image.string(Tag.REFERENCED_SOP_INSTANCE_UID).orElse("");
            Optional<DisplayedArea> area = DisplayedArea.of(state, uid);
            List<PointPx> points = points(object, area, at);
            Form form = form(object, points, at);
            marks.add(new ForeignMark(
                    at,
                    uid,
                    frames(image),
                    form,
                    form == Form.OUTLINE ? points.subList(0, points.size() - 1) : points,
                    labels(points, annotation, new Sheet(uid, frames(image), area)),
                    Optional.empty()));
        }
        return marks;
    }

    private static List<Integer> frames(DataSet image) {
        List<Integer> frames = new ArrayList<>();
        for (double frame : image.numbers(Tag.REFERENCED_FRAME_NUMBER)) {
            frames.add((int) frame);
        }
        return frames;
    }

    /** The image of the annotation, else the only one of the whole state. */
    private DataSet image(DataSet annotation, String at) {
        List<DataSet> own = annotation.items(Tag.REFERENCED_IMAGE_SEQUENCE);
        List<DataSet> images = own.isEmpty()
                ? state.items(Tag.REFERENCED_SERIES_SEQUENCE).stream()
                        .flatMap(series -> series.items(Tag.REFERENCED_IMAGE_SEQUENCE).stream())
                        .toList()
                : own;
        require(at, images.size() == 1, "it is drawn on " + images.size() + " images at once");
        return images.get(0);
    }

    /** In the image's pixels, or in fractions of the part of it that is displayed. */
    private static List<PointPx> points(DataSet object, Optional<DisplayedArea> area, String at) {
        String units = object.string(Tag.GRAPHIC_ANNOTATION_UNITS).orElse("");
        boolean fractions = units.equals(FRACTIONS) && area.isPresent();
        require(
                at,
                units.equals(PIXELS) || fractions,
                "it is drawn neither in the pixels of the image nor in fractions of a displayed part that is not turned");
        double[] data = object.numbers(Tag.GRAPHIC_DATA);
        require(at, data.length > 0 && data.length % 2 == 0, "its data are not pairs of column and row");
        List<PointPx> points = new ArrayList<>();
        for (int i = 0; i < data.length; i += 2) {
            require(
                    at,
                    Double.isFinite(data[i]) && Double.isFinite(data[i + 1]),
                    "a coordinate is not a finite number");
            PointPx point = new PointPx(data[i], data[i + 1]);
            points.add(fractions ? area.get().onImage(point) : point);
        }
        return points;
    }

    private static Form form(DataSet object, List<PointPx> points, String at) {
        String type = object.string(Tag.GRAPHIC_TYPE).orElse("");
        int count = points.size();
        return switch (type) {
            case "POINT" -> Form.POINT;
            case "CIRCLE" -> {
                require(at, count == 2, "a circle has two points");
                yield Form.CIRCLE;
            }
            case "ELLIPSE" -> {
                require(at, count == 4, "an ellipse has four points");
                yield Form.ELLIPSE;
            }
            case "POLYLINE", "INTERPOLATED" -> {
                require(at, count >= 2, "a line has two points or more");
                boolean closed = count > 3 && points.get(0).equals(points.get(count - 1));
                yield count == 2 ? Form.LINE : closed ? Form.OUTLINE : Form.POLYLINE;
            }
            default ->
                throw Fault.unsupported(
                        "The " + at + " is refused: its graphic type is not known",
                        "Draw a point, line, circle or ellipse.");
        };
    }

    private List<Label> labels(List<PointPx> points, DataSet annotation, Sheet sheet) {
        List<DataSet> own = annotation.items(Tag.TEXT_OBJECT_SEQUENCE);
        Optional<DataSet> text = isPair(annotation) ? Optional.of(own.get(0)) : nearest(own.stream(), points, sheet);
        return text.or(() -> nearest(elsewhere(sheet), points, sheet))
                .flatMap(found -> found.string(Tag.UNFORMATTED_TEXT_VALUE))
                .map(words -> List.of(Label.words(Kind.TEXT, words)))
                .orElse(List.of());
    }

    private static boolean isPair(DataSet annotation) {
        return annotation.items(Tag.GRAPHIC_OBJECT_SEQUENCE).size() == 1
                && annotation.items(Tag.TEXT_OBJECT_SEQUENCE).size() == 1;
    }

    /** Texts of all annotations of an image, but those that stand alone with a graphic of their own. */
    private Stream<DataSet> elsewhere(Sheet sheet) {
        return state.items(Tag.GRAPHIC_ANNOTATION_SEQUENCE).stream()
                .filter(other -> !isPair(other) && sheet.isUnder(other))
                .flatMap(other -> other.items(Tag.TEXT_OBJECT_SEQUENCE).stream());
    }

    private static Optional<DataSet> nearest(Stream<DataSet> texts, List<PointPx> points, Sheet sheet) {
        return texts.filter(text -> distance(text, points, sheet) <= NEAR_PX)
                .min(Comparator.comparingDouble(text -> distance(text, points, sheet)));
    }

    private static double distance(DataSet text, List<PointPx> points, Sheet sheet) {
        double[] anchor = text.numbers(Tag.ANCHOR_POINT);
        String units = text.string(Tag.ANCHOR_POINT_ANNOTATION_UNITS).orElse("");
        boolean fractions = units.equals(FRACTIONS) && sheet.area().isPresent();
        if (anchor.length != 2 || !(units.equals(PIXELS) || fractions)) {
            return Double.POSITIVE_INFINITY;
        }
        PointPx given = new PointPx(anchor[0], anchor[1]);
        PointPx at = fractions ? sheet.area().get().onImage(given) : given;
        return points.stream().mapToDouble(at::distanceTo).min().orElse(Double.POSITIVE_INFINITY);
    }

    private static void require(String at, boolean holds, String why) {
        if (!holds) {
            throw Fault.unsupported(
                    "The " + at + " is refused: " + why, "Draw it on one image, in its pixels, and send it again.");
        }
    }
}
