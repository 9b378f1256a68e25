// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.dicom.ItemValue.Coordinates;
import dev.plumbline.dicom.ItemValue.GraphicType;
import dev.plumbline.geometry.PointPx;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What is marked or drawn on one frame, by name; each becomes a SCOORD with the frame under it, TID 320. */
final class FrameMarks {
    private final ItemValue.Instance frame;
    private final Map<Code, Coordinates> byName = new LinkedHashMap<>();

    FrameMarks(ItemValue.Instance frame) {
        this.frame = frame;
    }

    FrameMarks point(Code name, PointPx at) {
        byName.put(name, new Coordinates(GraphicType.POINT, List.of(at)));
        return this;
    }

    FrameMarks point(Code name, Optional<PointPx> at) {
        at.ifPresent(point -> point(name, point));
        return this;
    }

    /** Nothing for fewer than two points, which make no line. */
    FrameMarks line(Code name, List<PointPx> points) {
        if (points.size() >= 2) {
            byName.put(name, new Coordinates(GraphicType.POLYLINE, points));
        }
        return this;
    }

    boolean has(Code name) {
        return byName.containsKey(name);
    }

    /** Those of the names that are there, in the order asked. */
    List<ContentItem> items(List<Code> names) {
        List<ContentItem> items = new ArrayList<>();
        for (Code name : names) {
            Coordinates coordinates = byName.get(name);
            if (coordinates != null) {
                items.add(item(name, coordinates));
            }
        }
        return items;
    }

    /** A drawing of its own under a name, not kept. */
    ContentItem item(Code name, Coordinates coordinates) {
        ContentItem image =
                new ContentItem(Relation.SELECTED_FROM, Optional.empty(), new ItemValue.Image(frame), List.of());
        return ContentItem.of(Relation.INFERRED_FROM, name, coordinates).with(image);
    }

    ContentItem item(Code name) {
        return items(List.of(name)).get(0);
    }
}
