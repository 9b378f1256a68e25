// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.geometry.PointPx;
import java.math.BigDecimal;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Function;

/** A JSON object being written from values that may be absent; what is absent or empty leaves no trace. */
final class Stated {
    private final ObjectNode node = JsonNodeFactory.instance.objectNode();

    /** As it was given: once, or as the repeats it is the mean of. */
    static ObjectNode point(PointPx point) {
        if (!point.repeats().isEmpty()) {
            return new Stated()
                    .putObjects(
                            "repeats",
                            point.repeats(),
                            repeat -> new Stated()
                                    .put("column", repeat.column())
                                    .put("row", repeat.row())
                                    .putText("by", repeat.by())
                                    .node())
                    .node();
        }
        return JsonNodeFactory.instance
                .objectNode()
                .put("column", point.column())
                .put("row", point.row());
    }

    static ArrayNode points(List<PointPx> points) {
        ArrayNode array = JsonNodeFactory.instance.arrayNode();
        points.forEach(p -> array.add(point(p)));
        return array;
    }

    Stated put(String name, OptionalDouble value) {
        value.ifPresent(v -> node.put(name, v));
        return this;
    }

    Stated put(String name, OptionalInt value) {
        value.ifPresent(v -> node.put(name, v));
        return this;
    }

    /** As a whole number where it is one, else as the shortest decimal; never with an exponent of its own. */
    Stated put(String name, BigDecimal value) {
        boolean whole = value.signum() == 0 || value.stripTrailingZeros().scale() <= 0;
        if (whole && value.abs().compareTo(BigDecimal.valueOf(Integer.MAX_VALUE)) <= 0) {
            node.put(name, value.intValue());
        } else {
            node.put(name, value.doubleValue());
        }
        return this;
    }

    Stated putDecimal(String name, Optional<BigDecimal> value) {
        value.ifPresent(v -> put(name, v));
        return this;
    }

    Stated putTime(String name, OffsetDateTime time) {
        node.put(name, DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(time));
        return this;
    }

    Stated putFlag(String name, boolean value) {
        node.put(name, value);
        return this;
    }

    Stated putTexts(String name, List<String> values) {
        if (!values.isEmpty()) {
            ArrayNode array = node.putArray(name);
            values.forEach(array::add);
        }
        return this;
    }

    Stated put(String name, int value) {
        node.put(name, value);
        return this;
    }

    Stated put(String name, double value) {
        node.put(name, value);
        return this;
    }

    Stated put(String name, String value) {
        node.put(name, value);
        return this;
    }

    Stated putText(String name, Optional<String> value) {
        value.ifPresent(v -> node.put(name, v));
        return this;
    }

    Stated putFlag(String name, Optional<Boolean> value) {
        value.ifPresent(v -> node.put(name, v));
        return this;
    }

    Stated putPoint(String name, Optional<PointPx> value) {
        value.ifPresent(v -> node.set(name, point(v)));
        return this;
    }

    Stated putPoints(String name, List<PointPx> values) {
        if (!values.isEmpty()) {
            node.set(name, points(values));
        }
        return this;
    }

    Stated putObject(String name, ObjectNode value) {
        if (!value.isEmpty()) {
            node.set(name, value);
        }
        return this;
    }

    Stated putObject(String name, Optional<ObjectNode> value) {
        value.ifPresent(v -> node.set(name, v));
        return this;
    }

    <T> Stated putObjects(String name, List<T> values, Function<T, ObjectNode> writing) {
        if (!values.isEmpty()) {
            ArrayNode array = node.putArray(name);
            values.forEach(v -> array.add(writing.apply(v)));
        }
        return this;
    }

    ObjectNode node() {
        return node;
    }
}
