// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.dicom.ItemValue.Coordinates;
import dev.plumbline.dicom.ItemValue.GraphicType;
import dev.plumbline.dicom.ItemValue.Image;
import dev.plumbline.dicom.ItemValue.Instance;
import dev.plumbline.geometry.PointPx;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/**
 * Graphic Annotation Sequence, DICOM PS3.3 C.10.5: what the groups of a report draw on one frame, each with its words at an
 * anchor and its tracking identifiers, so that a line in a presentation state is known as the one of the report.
 *
 * <p>Coordinates are taken over as they are: PIXEL units and SCOORD have the same origin, the outer corner of the first
 * pixel.
 */
final class FrameGraphics {
    private static final String NEXT_LINE = "\r\n";

    private final Instance frame;

    private FrameGraphics(Instance frame) {
        this.frame = frame;
    }

    static List<DataSet> of(ContentItem report, Instance frame) {
        FrameGraphics graphics = new FrameGraphics(frame);
        return RecordReader.groups(report).stream()
                .map(ReadGroup::item)
                .flatMap(graphics::annotation)
                .toList();
    }

    private Stream<DataSet> annotation(ContentItem group) {
        List<Coordinates> drawn = drawn(group);
        if (drawn.isEmpty()) {
            return Stream.empty();
        }
        GraphicLayer layer = GraphicLayer.of(group.codeOf(Concepts.FINDING).orElseThrow());
        List<DataSet> objects = drawn.stream()
                .map(coordinates -> tracked(group, graphic(coordinates)))
                .toList();
        DataSet annotation = new DataSet()
                .put(Tag.REFERENCED_IMAGE_SEQUENCE, List.of(ContentWriter.instance(frame)))
                .put(Tag.GRAPHIC_LAYER, layer.name());
        List<String> words = comments(group);
        if (!words.isEmpty()) {
            annotation.put(
                    Tag.TEXT_OBJECT_SEQUENCE,
                    List.of(tracked(group, text(String.join(NEXT_LINE, words), anchor(drawn.get(0))))));
        }
        return Stream.of(annotation.put(Tag.GRAPHIC_OBJECT_SEQUENCE, objects));
    }

    /** The coordinates of thin numbers, which are what viewers of the report draw. */
    private List<Coordinates> drawn(ContentItem group) {
        List<Coordinates> drawn = new ArrayList<>();
        for (ContentItem number : group.children()) {
            if (number.children().size() == 1
                    && number.children().get(0).value() instanceof Coordinates coordinates
                    && isOnFrame(number.children().get(0))) {
                drawn.add(coordinates);
            }
        }
        return drawn;
    }

    private boolean isOnFrame(ContentItem coordinates) {
        return coordinates.children().stream()
                .anyMatch(child ->
                        child.value() instanceof Image image && image.instance().equals(frame));
    }

    private static List<String> comments(ContentItem group) {
        return group.named(Concepts.COMMENT)
                .flatMap(item -> item.value() instanceof ItemValue.Text text ? Stream.of(text.text()) : Stream.of())
                .toList();
    }

    private static DataSet tracked(ContentItem group, DataSet object) {
        group.textOf(Concepts.TRACKING_IDENTIFIER).ifPresent(label -> object.put(Tag.TRACKING_ID, label));
        group.first(Concepts.TRACKING_UID)
                .ifPresent(item -> object.put(Tag.TRACKING_UID, ((ItemValue.Uid) item.value()).uid()));
        return object;
    }

    private static DataSet graphic(Coordinates coordinates) {
        List<PointPx> points = coordinates.points();
        DataSet object = new DataSet()
                .put(Tag.GRAPHIC_ANNOTATION_UNITS, "PIXEL")
                .put(Tag.GRAPHIC_DIMENSIONS, 2)
                .put(Tag.NUMBER_OF_GRAPHIC_POINTS, points.size())
                .put(Tag.GRAPHIC_DATA, ContentWriter.graphicData(points))
                .put(Tag.GRAPHIC_TYPE, coordinates.type().name());
        boolean closed = points.size() > 2 && points.get(0).equals(points.get(points.size() - 1));
        return closed ? object.put(Tag.GRAPHIC_FILLED, "N") : object;
    }

    /**
     * The mark; the middle of a path, because its ends lie at the border of the image and at the target; the upper end of an
     * outline, where words hide the least.
     */
    private static PointPx anchor(Coordinates coordinates) {
        List<PointPx> points = coordinates.points();
        PointPx first = points.get(0);
        PointPx last = points.get(points.size() - 1);
        if (coordinates.type() == GraphicType.POLYLINE && first.equals(last)) {
            return points.stream().min(Comparator.comparingDouble(PointPx::row)).orElseThrow();
        }
        return new PointPx((first.column() + last.column()) / 2, (first.row() + last.row()) / 2).onGrid();
    }

    private static DataSet text(String words, PointPx anchor) {
        return new DataSet()
                .put(Tag.ANCHOR_POINT_ANNOTATION_UNITS, "PIXEL")
                .put(Tag.UNFORMATTED_TEXT_VALUE, words)
                .put(Tag.ANCHOR_POINT, ContentWriter.graphicData(List.of(anchor)))
                .put(Tag.ANCHOR_POINT_VISIBILITY, "N");
    }
}
