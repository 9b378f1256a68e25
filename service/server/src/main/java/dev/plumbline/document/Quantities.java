// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.geometry.Measurand;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Reading;
import dev.plumbline.geometry.Readings;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** Readings as JSON: {@code {value, standardUncertainty, expandedUncertainty}}, or {@code {value: null, reason}}. */
final class Quantities {
    private static final JsonNodeFactory JSON = JsonNodeFactory.instance;

    private Quantities() {}

    static ObjectNode quantity(Reading reading) {
        return reading.fold(
                seen -> JSON.objectNode()
                        .put("value", seen.value() + 0.0) // no negative zero
                        .put("standardUncertainty", seen.standardUncertainty())
                        .put("expandedUncertainty", seen.expandedUncertainty()),
                notSeen -> JSON.objectNode()
                        .putNull("value")
                        .put("reason", notSeen.reason().word()));
    }

    /** A quantity that also says whether it differs from zero by more than its expanded uncertainty. */
    static ObjectNode difference(Reading reading) {
        ObjectNode node = quantity(reading);
        return reading.fold(seen -> node.put("exceedsUncertainty", seen.exceedsUncertainty()), notSeen -> node);
    }

    static <M extends Enum<M> & Measurand> void putAll(ObjectNode node, Readings<M> readings) {
        readings.measurands().forEach(m -> node.set(m.field(), quantity(readings.of(m))));
    }

    static <M extends Enum<M> & Measurand> void putAllDifferences(ObjectNode node, Readings<M> readings) {
        readings.measurands().forEach(m -> node.set(m.field(), difference(readings.of(m))));
    }

    static <T> ArrayNode words(List<T> values, Function<T, String> word) {
        return array(values, value -> JSON.textNode(word.apply(value)));
    }

    static <T> ArrayNode array(List<T> values, Function<T, ? extends JsonNode> writing) {
        ArrayNode array = JSON.arrayNode();
        values.forEach(value -> array.add(writing.apply(value)));
        return array;
    }

    static JsonNode mark(Optional<PointPx> point) {
        return point.<JsonNode>map(Stated::point).orElseGet(JSON::nullNode);
    }
}
