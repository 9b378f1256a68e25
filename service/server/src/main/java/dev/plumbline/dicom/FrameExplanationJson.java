// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.geometry.Calibration;
import dev.plumbline.geometry.KnownDistance;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Region;
import java.util.List;
import java.util.OptionalDouble;

/** The explanation of a frame as every door answers it; what is not known is null. */
public final class FrameExplanationJson {
    private FrameExplanationJson() {}

    /** The frame answer of the interface description. */
    public static ObjectNode of(FrameExplanation explanation) {
        ObjectNode answer = JsonNodeFactory.instance
                .objectNode()
                .put("frameCount", explanation.frameCount())
                .put("frameNumber", explanation.frameNumber());
        answer.set("calibration", calibration(explanation));
        answer.set("regions", regions(explanation.regions()));
        answer.set("probe", probe(explanation.probe()));
        return answer.put("text", explanation.text());
    }

    private static ObjectNode calibration(FrameExplanation explanation) {
        ObjectNode node = JsonNodeFactory.instance
                .objectNode()
                .put(
                        "source",
                        explanation
                                .calibration()
                                .map(found -> found.source().word())
                                .orElse("none"));
        number(
                node,
                "mmPerColumn",
                explanation.calibration().stream()
                        .mapToDouble(found -> found.pixel().mmPerColumn())
                        .findFirst());
        number(
                node,
                "mmPerRow",
                explanation.calibration().stream()
                        .mapToDouble(found -> found.pixel().mmPerRow())
                        .findFirst());
        explanation
                .calibration()
                .flatMap(Calibration::region)
                .ifPresentOrElse(region -> node.set("region", bounds(region)), () -> node.putNull("region"));
        explanation
                .calibration()
                .flatMap(Calibration::knownDistance)
                .ifPresent(distance -> node.set("scale", scale(distance)));
        number(node, "widthMm", explanation.widthMm());
        number(node, "depthMm", explanation.depthMm());
        node.set("doubts", strings(explanation.doubts()));
        return node;
    }

    private static ObjectNode scale(KnownDistance distance) {
        ObjectNode node = JsonNodeFactory.instance.objectNode().put("distanceMm", distance.distanceMm());
        node.set("from", mark(distance.from()));
        node.set("to", mark(distance.to()));
        return node;
    }

    private static ObjectNode bounds(Region region) {
        return JsonNodeFactory.instance
                .objectNode()
                .put("index", region.index())
                .put("minColumn", region.minColumn())
                .put("minRow", region.minRow())
                .put("maxColumn", region.maxColumn())
                .put("maxRow", region.maxRow());
    }

    private static ArrayNode regions(List<FrameExplanation.RegionNote> notes) {
        ArrayNode array = JsonNodeFactory.instance.arrayNode();
        notes.forEach(note -> array.addObject()
                .put("index", note.number() - 1)
                .put("used", note.used())
                .put("note", note.note()));
        return array;
    }

    private static ObjectNode probe(ProbeEstimate probe) {
        ObjectNode node = JsonNodeFactory.instance
                .objectNode()
                .put("kind", probe.kind().map(kind -> kind.word()).orElse("unknown"));
        number(node, "footprintMm", probe.footprintMm());
        number(node, "arcRadiusMm", probe.arcRadiusMm());
        probe.midpoint()
                .ifPresentOrElse(midpoint -> node.set("midpoint", mark(midpoint)), () -> node.putNull("midpoint"));
        node.put("confidence", probe.confidence().word());
        node.set("why", strings(probe.why()));
        return node;
    }

    private static ObjectNode mark(PointPx point) {
        return JsonNodeFactory.instance
                .objectNode()
                .put("column", point.column())
                .put("row", point.row());
    }

    private static ArrayNode strings(List<String> words) {
        ArrayNode array = JsonNodeFactory.instance.arrayNode();
        words.forEach(array::add);
        return array;
    }

    private static void number(ObjectNode node, String field, OptionalDouble value) {
        value.ifPresentOrElse(number -> node.put(field, number), () -> node.putNull(field));
    }
}
