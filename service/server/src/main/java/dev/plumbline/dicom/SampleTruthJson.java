// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.geometry.PixelSize;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Shape;
import dev.plumbline.geometry.Side;
import dev.plumbline.geometry.UltrasoundRegion;
import dev.plumbline.plan.Hazard;
import dev.plumbline.plan.Nerve;
import dev.plumbline.samples.Sample;
import dev.plumbline.samples.SampleTruth;
import java.util.List;

/** The truth behind a sample as JSON: marks in corner-origin pixels, lengths in mm, angles in degrees. */
final class SampleTruthJson {
    private SampleTruthJson() {}

    static ObjectNode of(Sample sample, String sopInstanceUid) {
        ObjectNode json = object().put("schema", "plumbline-sample-truth/1");
        json.put("name", sample.name()).put("shows", sample.shows()).put("sopInstanceUid", sopInstanceUid);
        SampleTruth first = sample.scene().truths().get(0);
        json.put("block", sample.scene().block());
        json.set("scale", scale(first));
        ArrayNode frames = json.putArray("frames");
        List<SampleTruth> truths = sample.scene().truths();
        for (int i = 0; i < truths.size(); i++) {
            frames.add(frame(truths.get(i)).put("frameNumber", i + 1));
        }
        return json;
    }

    private static ObjectNode scale(SampleTruth truth) {
        ObjectNode json = object();
        json.set("truePixelMm", pixel(truth.pixel()));
        truth.scale().pixelSpacing().ifPresent(pixel -> json.set("pixelSpacing", pixel(pixel)));
        ArrayNode regions = json.putArray("regions");
        for (UltrasoundRegion region : truth.scale().regions()) {
            regions.addObject()
                    .put("minColumn", region.bounds().minColumn())
                    .put("minRow", region.bounds().minRow())
                    .put("maxColumn", region.bounds().maxColumn())
                    .put("maxRow", region.bounds().maxRow())
                    .put("dataType", region.dataType())
                    .put("deltaXCm", region.deltaX())
                    .put("deltaYCm", region.deltaY());
        }
        return json;
    }

    private static ObjectNode frame(SampleTruth truth) {
        ObjectNode json = object();
        json.set("probe", probe(truth.probe()));
        json.set("skin", points(truth.skin()));
        json.putObject("target")
                .put("kind", truth.target().kind().word())
                .put("depthMm", truth.target().depthMm())
                .put("acrossMm", truth.target().acrossMm())
                .set("at", point(truth.target().at()));
        truth.needle().ifPresent(needle -> json.set("needle", needle(needle)));
        ArrayNode nerves = json.putArray("nerves");
        for (Nerve nerve : truth.structures().nerves()) {
            nerves.addObject().put("name", nerve.name()).set("outline", outline(nerve.shape()));
        }
        ArrayNode hazards = json.putArray("hazards");
        for (Hazard hazard : truth.structures().hazards()) {
            hazards.addObject()
                    .put("name", hazard.name())
                    .put("kind", hazard.kind().word())
                    .set("outline", outline(hazard.shape()));
        }
        return json;
    }

    private static ObjectNode probe(SampleTruth.ProbeTruth probe) {
        ObjectNode json = object().put("kind", probe.kind().word()).put("footprintMm", probe.footprintMm());
        json.set("midpoint", point(probe.midpoint()));
        probe.face()
                .ifPresent(face -> json.putObject("face")
                        .put("radiusMm", face.radiusMm())
                        .put("halfAngleDeg", face.halfAngleDeg())
                        .set("center", point(face.center())));
        return json;
    }

    private static ObjectNode needle(SampleTruth.NeedleTruth needle) {
        SampleTruth.NeedleLengths lengths = needle.lengths();
        ObjectNode json = object().put("approach", needle.approach().word())
                .put("tipVisible", needle.tipVisible())
                .put("angleToSkinDeg", lengths.angleToSkinDeg())
                .put("endDepthMm", lengths.endDepthMm())
                .put("pathMm", lengths.pathMm());
        lengths.entryDistanceMm().ifPresent(mm -> json.put("entryDistanceMm", mm));
        lengths.punctureDistanceMm().ifPresent(mm -> json.put("punctureDistanceMm", mm));
        needle.from().map(Side::word).ifPresent(side -> json.put("from", side));
        json.set("end", point(needle.end()));
        needle.entry().ifPresent(entry -> json.set("entry", point(entry)));
        json.set("visible", points(needle.visible()));
        return json;
    }

    private static ArrayNode outline(Shape shape) {
        return points(((Shape.Outline) shape).points());
    }

    private static ArrayNode points(List<PointPx> points) {
        ArrayNode json = JsonNodeFactory.instance.arrayNode();
        points.forEach(point -> json.add(point(point)));
        return json;
    }

    private static ObjectNode point(PointPx point) {
        return object().put("column", point.column()).put("row", point.row());
    }

    private static ObjectNode pixel(PixelSize pixel) {
        return object().put("mmPerColumn", pixel.mmPerColumn()).put("mmPerRow", pixel.mmPerRow());
    }

    private static ObjectNode object() {
        return JsonNodeFactory.instance.objectNode();
    }
}
