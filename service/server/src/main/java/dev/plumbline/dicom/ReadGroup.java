// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.dicom.ItemValue.Coordinates;
import dev.plumbline.dicom.ItemValue.Image;
import dev.plumbline.dicom.ItemValue.Instance;
import dev.plumbline.geometry.PointPx;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** TID 1501 read back: what a group says of itself, its parameters and its marks. Only rich numbers count. */
final class ReadGroup {
    private static final JsonMapper JSON = new JsonMapper();

    private final ContentItem group;

    ReadGroup(ContentItem group) {
        this.group = group;
    }

    ContentItem item() {
        return group;
    }

    boolean is(Code finding) {
        return group.codeOf(Concepts.FINDING).filter(finding::means).isPresent();
    }

    String label() {
        return group.textOf(Concepts.TRACKING_IDENTIFIER).orElse("");
    }

    /** The parameters; an empty object where the group has none or they are no JSON object. */
    ObjectNode parameters() {
        String text = group.textOf(Concepts.ALGORITHM_PARAMETERS).orElse("{}");
        try {
            return JSON.readTree(text) instanceof ObjectNode object ? object : emptyObject();
        } catch (JsonProcessingException e) {
            throw Fault.malformed(
                    "The algorithm parameters (111002) of " + group.name().orElse(Concepts.PLAN) + " are no JSON");
        }
    }

    /** Numbers that say exactly what they are. */
    Stream<ContentItem> richNumbers() {
        return group.children().stream()
                .filter(child -> child.value() instanceof ItemValue.Numeric)
                .filter(child -> child.codeOf(Concepts.EQUIVALENT_MEANING).isPresent());
    }

    Optional<ContentItem> number(Quantity quantity) {
        return richNumbers()
                .filter(child -> child.codeOf(Concepts.EQUIVALENT_MEANING)
                        .filter(quantity.code()::means)
                        .isPresent())
                .findFirst();
    }

    /** The points of a mark under one of the rich numbers; empty where it is not there. */
    List<PointPx> points(Code mark) {
        return richNumbers().flatMap(number -> points(number, mark)).findFirst().orElse(List.of());
    }

    /** The points of a mark under the rich number of one quantity. */
    List<PointPx> points(Quantity quantity, Code mark) {
        return number(quantity).stream()
                .flatMap(number -> points(number, mark))
                .findFirst()
                .orElse(List.of());
    }

    private static Stream<List<PointPx>> points(ContentItem number, Code mark) {
        return number.named(mark)
                .flatMap(item -> item.value() instanceof Coordinates c ? Stream.of(c.points()) : Stream.of());
    }

    /** The one frame that all marks of the group are on; empty where it names none. */
    Optional<Instance> frame() {
        return group.walk()
                .flatMap(item -> item.value() instanceof Image image ? Stream.of(image.instance()) : Stream.of())
                .findFirst();
    }

    static ObjectNode frame(Instance instance) {
        return emptyObject()
                .put("sopInstanceUid", instance.sopInstanceUid())
                .put("frameNumber", instance.frameNumber().orElse(1));
    }

    static ObjectNode point(PointPx at) {
        return emptyObject().put("column", at.column()).put("row", at.row());
    }

    static ArrayNode array(List<PointPx> points) {
        ArrayNode array = JsonNodeFactory.instance.arrayNode();
        points.forEach(at -> array.add(point(at)));
        return array;
    }

    static ObjectNode emptyObject() {
        return JsonNodeFactory.instance.objectNode();
    }
}
