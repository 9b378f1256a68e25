// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.document.Canonical;
import dev.plumbline.document.CaseJson;
import dev.plumbline.geometry.Calibration;
import dev.plumbline.geometry.Region;
import dev.plumbline.record.CaseDocument;
import java.util.List;
import java.util.Optional;

/**
 * The parameters of an algorithm (111002): one canonical JSON object in the names of the case document, with what was
 * stated and is not a mark. Together with the marks in the tree it gives the case document back.
 */
final class Parameters {
    private static final List<String> PLAN_FIELDS =
            List.of("schema", "approach", "constraints", "intent", "needle", "uncertainty");
    private static final List<String> OBSERVATION_FIELDS = List.of("id", "phase", "tipIsTip", "punctureDistanceMm");
    private static final List<String> MARKS = List.of("shaft", "tip", "midpoint", "target", "skin");
    private static final List<String> STRUCTURE_FIELDS = List.of("name", "kind", "marginMm");

    private Parameters() {}

    /** @param order what stands of it nowhere else */
    static String plan(CaseDocument document, Optional<Calibration> calibration, Optional<ObjectNode> order) {
        ObjectNode json = CaseJson.write(document);
        ObjectNode parameters = some(json, PLAN_FIELDS);
        JsonNode marks = json.path("marks");
        ObjectNode probe = json.path("probe").deepCopy() instanceof ObjectNode stated ? stated : emptyObject();
        probe.remove("midpoint");
        parameters.set("probe", probe);
        Repeats.keep(some(json, List.of("probe", "marks")), parameters);
        if (marks.has("targetKind")) {
            parameters.set("targetKind", marks.get("targetKind"));
        }
        parameters.set("hazards", structures(marks.path("hazards")));
        parameters.set("nerves", structures(marks.path("nerves")));
        putScale(parameters, json);
        calibration.ifPresent(c -> parameters.set("calibration", calibration(c)));
        order.ifPresent(beyond -> parameters.set("order", beyond));
        return Canonical.text(parameters);
    }

    static String observation(CaseDocument document, int index, Optional<Calibration> calibration) {
        JsonNode json = CaseJson.write(document).path("observations").path(index);
        ObjectNode parameters = some(json, OBSERVATION_FIELDS);
        Repeats.keep(some(json, MARKS), parameters);
        putScale(parameters, json);
        calibration.ifPresent(c -> parameters.set("calibration", calibration(c)));
        return Canonical.text(parameters);
    }

    static String none() {
        return "{}";
    }

    /** The frame itself is referenced; what a person states about its scale stands nowhere else. */
    private static void putScale(ObjectNode parameters, JsonNode json) {
        JsonNode scale = json.path("frame").path("scale");
        if (scale.isObject()) {
            parameters.putObject("frame").set("scale", scale);
        }
    }

    private static ObjectNode some(JsonNode from, List<String> fields) {
        ObjectNode some = emptyObject();
        for (String field : fields) {
            if (from.has(field)) {
                some.set(field, from.get(field));
            }
        }
        return some;
    }

    /** Names and what belongs to them; the shapes are marks. The radius says that a structure is a disc. */
    private static ArrayNode structures(JsonNode list) {
        ArrayNode structures = JsonNodeFactory.instance.arrayNode();
        for (JsonNode structure : list) {
            ObjectNode kept = some(structure, STRUCTURE_FIELDS);
            if (structure.has("disc")) {
                kept.set("radiusMm", structure.get("disc").get("radiusMm"));
            }
            structures.add(kept);
        }
        return structures;
    }

    private static ObjectNode calibration(Calibration calibration) {
        ObjectNode node = emptyObject()
                .put("source", calibration.source().word())
                .put("mmPerColumn", calibration.pixel().mmPerColumn())
                .put("mmPerRow", calibration.pixel().mmPerRow());
        calibration.region().ifPresent(region -> node.set("region", region(region)));
        return node;
    }

    private static ObjectNode region(Region region) {
        return emptyObject()
                .put("index", region.index())
                .put("minColumn", region.minColumn())
                .put("minRow", region.minRow())
                .put("maxColumn", region.maxColumn())
                .put("maxRow", region.maxRow());
    }

    private static ObjectNode emptyObject() {
        return JsonNodeFactory.instance.objectNode();
    }
}
