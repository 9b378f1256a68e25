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

/**
 * The graphics of a presentation state of other software (DICOM PS3.3 C.10.5). A text belongs to a graphic when both stand
 * alone in one annotation, else to the nearest graphic within 20 pixels of its anchor (design choice).
 */
final class ForeignPresentation {
    private static final double NEAR_PX = 20;
    private static final int MOST_GRAPHICS = 20_000;

    private final DataSet state;
    private int graphics;

    private ForeignPresentation(DataSet state) {
        this.state = state;
    }

    /**
     * Reads a presentation state.
     *
     * @throws dev.plumbline.problem.Refusal when a graphic is not drawn in the image's pixels, or there are too many
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
        List<DataSet> texts = annotation.items(Tag.TEXT_OBJECT_SEQUENCE);
        List<ForeignMark> marks = new ArrayList<>();
        for (int g = 0; g < objects.size(); g++) {
            if (++graphics > MOST_GRAPHICS) {
                throw Fault.unsupported(
                        "The presentation state has more than " + MOST_GRAPHICS + " graphics", "Send fewer.");
            }
            DataSet object = objects.get(g);
            String at = place + ", graphic " + (g + 1);
            List<PointPx> points = points(object, at);
            Form form = form(object, points, at);
            List<Label> labels = labels(points, texts, objects.size() == 1 && texts.size() == 1);
            DataSet image = image(annotation, at);
            marks.add(new ForeignMark(
                    at,
                    image.string(Tag.REFERENCED_SOP_INSTANCE_UID).orElse(""),
                    frames(image),
                    form,
                    form == Form.OUTLINE ? points.subList(0, points.size() - 1) : points,
                    labels,
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

    private static List<PointPx> points(DataSet object, String at) {
        require(
                at,
                object.string(Tag.GRAPHIC_ANNOTATION_UNITS)
                        .filter("PIXEL"::equals)
                        .isPresent(),
                "it is not drawn in the pixels of the image");
        double[] data = object.numbers(Tag.GRAPHIC_DATA);
        require(at, data.length > 0 && data.length % 2 == 0, "its data are not pairs of column and row");
        List<PointPx> points = new ArrayList<>();
        for (int i = 0; i < data.length; i += 2) {
            require(
                    at,
                    Double.isFinite(data[i]) && Double.isFinite(data[i + 1]),
                    "a coordinate is not a finite number");
            points.add(new PointPx(data[i], data[i + 1]));
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

    private static List<Label> labels(List<PointPx> points, List<DataSet> texts, boolean alone) {
        if (alone) {
            return texts.get(0).string(Tag.UNFORMATTED_TEXT_VALUE).stream()
                    .map(text -> Label.words(Kind.TEXT, text))
                    .toList();
        }
        return texts.stream()
                .filter(text -> distance(text, points) <= NEAR_PX)
                .min(Comparator.comparingDouble(text -> distance(text, points)))
                .flatMap(text -> text.string(Tag.UNFORMATTED_TEXT_VALUE))
                .map(text -> List.of(Label.words(Kind.TEXT, text)))
                .orElse(List.of());
    }

    private static double distance(DataSet text, List<PointPx> points) {
        double[] anchor = text.numbers(Tag.ANCHOR_POINT);
        boolean pixels = text.string(Tag.ANCHOR_POINT_ANNOTATION_UNITS)
                .filter("PIXEL"::equals)
                .isPresent();
        if (anchor.length != 2 || !pixels) {
            return Double.POSITIVE_INFINITY;
        }
        PointPx at = new PointPx(anchor[0], anchor[1]);
        return points.stream().mapToDouble(at::distanceTo).min().orElse(Double.POSITIVE_INFINITY);
    }

    private static void require(String at, boolean holds, String why) {
        if (!holds) {
            throw Fault.unsupported(
                    "The " + at + " is refused: " + why, "Draw it on one image, in pixels, and send it again.");
        }
    }
}
