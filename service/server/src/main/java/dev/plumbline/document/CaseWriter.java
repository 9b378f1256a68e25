// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.geometry.InputUncertainty;
import dev.plumbline.geometry.KnownDistance;
import dev.plumbline.geometry.Probe;
import dev.plumbline.geometry.Shape;
import dev.plumbline.geometry.Side;
import dev.plumbline.geometry.SkinBeyondProbe;
import dev.plumbline.needle.Needle;
import dev.plumbline.needle.NeedleWish;
import dev.plumbline.observation.ObservationMarks;
import dev.plumbline.observation.Phase;
import dev.plumbline.plan.Approach;
import dev.plumbline.plan.Constraints;
import dev.plumbline.plan.Hazard;
import dev.plumbline.plan.Intent;
import dev.plumbline.plan.Nerve;
import dev.plumbline.plan.PlanMarks;
import dev.plumbline.plan.TargetKind;
import dev.plumbline.procedure.Laterality;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.Context;
import dev.plumbline.record.FrameRef;
import dev.plumbline.record.ObservedFrame;
import dev.plumbline.record.Signature;
import java.util.Optional;

/** Writes the case document field by field, the mirror of the readers. */
final class CaseWriter {
    ObjectNode write(CaseDocument document) {
        Stated node = new Stated()
                .put("schema", CaseDocument.SCHEMA)
                .putText("caseId", document.caseId())
                .putText("approach", document.technique().map(Approach::word))
                .putObject("frame", frame(document.frame()))
                .putObject("probe", probe(document.probe()))
                .putObject("marks", marks(document.marks()))
                .putObject("needle", needle(document.needle()))
                .putObject("intent", document.intent().map(CaseWriter::intent).orElseGet(CaseWriter::nothing))
                .putObject("constraints", constraints(document.constraints()))
                .putObject("uncertainty", uncertainty(document.uncertainty()))
                .putObjects("observations", document.observations(), CaseWriter::observation)
                .putObject("context", context(document))
                .putObject("order", document.context().order().map(OrderJson::write))
                .putObject(
                        "signature",
                        document.signature().map(CaseWriter::signature).orElseGet(CaseWriter::nothing));
        BedsideWriter.into(node, document.bedside());
        return node.node();
    }

    private static ObjectNode nothing() {
        return JsonNodeFactory.instance.objectNode();
    }

    static ObjectNode frame(FrameRef frame) {
        if (frame instanceof FrameRef.File file) {
            return scaled(nothing().put("file", file.path()).put("frameNumber", file.frameNumber()), file.scale());
        }
        if (frame instanceof FrameRef.Held held) {
            return scaled(
                    nothing().put("sopInstanceUid", held.sopInstanceUid()).put("frameNumber", held.frameNumber()),
                    held.scale());
        }
        FrameRef.Stated stated = (FrameRef.Stated) frame;
        return nothing()
                .put("columns", stated.columns())
                .put("rows", stated.rows())
                .put("mmPerColumn", stated.mmPerColumn())
                .put("mmPerRow", stated.mmPerRow());
    }

    private static ObjectNode scaled(ObjectNode frame, Optional<KnownDistance> scale) {
        scale.ifPresent(stated -> frame.putObject("scale")
                .put("distanceMm", stated.distanceMm())
                .<ObjectNode>set("from", Stated.point(stated.from()))
                .set("to", Stated.point(stated.to())));
        return frame;
    }

    private static ObjectNode probe(Probe probe) {
        ObjectNode node = new Stated()
                .putText("kind", probe.kind().map(Probe.Kind::word))
                .put("footprintMm", probe.footprintMm())
                .putPoint("midpoint", probe.midpoint())
                .putText("needleSide", probe.needleSide().map(Side::word))
                .put("beamThicknessMm", probe.beamThicknessMm())
                .put("housingLengthMm", probe.housingLengthMm())
                .put("housingHalfThicknessMm", probe.housingHalfThicknessMm())
                .putFlag("imageInverted", probe.imageInverted())
                .put("arcRadiusMm", probe.arcRadiusMm())
                .put("speedOfSoundMPerS", probe.speedOfSoundMPerS())
                .node();
        probe.skinBeyondProbe().ifPresent(skin -> node.set("skinBeyondProbe", skin(skin)));
        return node;
    }

    private static JsonNode skin(SkinBeyondProbe skin) {
        if (skin instanceof SkinBeyondProbe.Round round) {
            return nothing().put("radiusMm", round.radiusMm());
        }
        if (skin instanceof SkinBeyondProbe.Drop drop) {
            return nothing().put("dropMm", drop.dropMm()).put("atMm", drop.atMm());
        }
        return JsonNodeFactory.instance.textNode("flat");
    }

    private static ObjectNode marks(PlanMarks marks) {
        return new Stated()
                .putObject("target", Stated.point(marks.target()))
                .putText("targetKind", marks.targetKind().map(TargetKind::word))
                .putPoints("skin", marks.skin())
                .putObjects("nerves", marks.nerves(), CaseWriter::nerve)
                .putObjects("hazards", marks.hazards(), CaseWriter::hazard)
                .node();
    }

    private static ObjectNode nerve(Nerve nerve) {
        return shape(new Stated().put("name", nerve.name()), nerve.shape());
    }

    private static ObjectNode hazard(Hazard hazard) {
        Stated node = new Stated()
                .put("name", hazard.name())
                .put("kind", hazard.kind().word())
                .put("marginMm", hazard.marginMm());
        return shape(node, hazard.shape());
    }

    private static ObjectNode shape(Stated node, Shape shape) {
        if (shape instanceof Shape.Outline outline) {
            return node.putPoints("outline", outline.points()).node();
        }
        Shape.Disc disc = (Shape.Disc) shape;
        ObjectNode round = nothing().put("radiusMm", disc.radiusMm());
        round.set("center", Stated.point(disc.center()));
        return node.putObject("disc", round).node();
    }

    private static ObjectNode needle(Needle needle) {
        return new Stated()
                .put("gauge", needle.gauge())
                .put("lengthMm", needle.lengthMm())
                .putFlag("echogenic", needle.echogenic())
                .putObject("wish", needle.wish().map(CaseWriter::wish).orElseGet(CaseWriter::nothing))
                .node();
    }

    private static ObjectNode wish(NeedleWish wish) {
        ObjectNode node = nothing();
        if (!wish.tipTypes().isEmpty()) {
            ArrayNode tips = node.putArray("tipTypes");
            wish.tipTypes().forEach(tip -> tips.add(tip.word()));
        }
        if (!wish.gauges().isEmpty()) {
            ArrayNode gauges = node.putArray("gauges");
            wish.gauges().forEach(gauges::add);
        }
        wish.echogenic().ifPresent(wanted -> node.put("echogenic", wanted));
        return node;
    }

    private static ObjectNode intent(Intent intent) {
        if (intent instanceof Intent.EntryDistance entry) {
            return nothing().put("entryDistanceMm", entry.mm());
        }
        if (intent instanceof Intent.AngleToSkin angle) {
            return nothing().put("angleToSkinDeg", angle.degrees());
        }
        if (intent instanceof Intent.PunctureDistance puncture) {
            return nothing().put("punctureDistanceMm", puncture.mm());
        }
        return new Stated()
                .putObject("entry", Stated.point(((Intent.EntryMark) intent).at()))
                .node();
    }

    private static ObjectNode constraints(Constraints limits) {
        ObjectNode node = new Stated()
                .put("footprintClearanceMm", limits.footprintClearanceMm())
                .putFlag("entryAtProbeEdge", limits.entryAtProbeEdge())
                .put("reserveMm", limits.reserveMm())
                .put("cautionWithinMm", limits.cautionWithinMm())
                .put("overshootMm", limits.overshootMm())
                .put("leadInMaxMm", limits.leadInMaxMm())
                .put("heelInMaxDeg", limits.heelInMaxDeg())
                .putText("prefer", limits.prefer().map(Constraints.Preference::word))
                .put("outOfPlaneAngleDeg", limits.outOfPlaneAngleDeg())
                .put("maxPunctureDistanceMm", limits.maxPunctureDistanceMm())
                .put("steepPunctureDistanceMm", limits.steepPunctureDistanceMm())
                .node();
        limits.angleBand()
                .ifPresent(
                        band -> node.putArray("angleBandDeg").add(band.lowDeg()).add(band.highDeg()));
        return node;
    }

    private static ObjectNode uncertainty(InputUncertainty uncertainty) {
        return new Stated()
                .put("markPx", uncertainty.markPx())
                .put("scaleRelative", uncertainty.scaleRelative())
                .putObject(
                        "scannerTolerance",
                        uncertainty
                                .scannerTolerance()
                                .map(t -> nothing().put("mm", t.mm()).put("percent", t.percent()))
                                .orElseGet(CaseWriter::nothing))
                .node();
    }

    private static ObjectNode observation(ObservedFrame observed) {
        ObservationMarks marks = observed.marks();
        return new Stated()
                .put("id", marks.id())
                .putText("phase", marks.phase().map(Phase::word))
                .putObject("frame", frame(observed.frame()))
                .putPoints("shaft", marks.shaft())
                .putPoint("tip", marks.tip())
                .putFlag("tipIsTip", marks.tipIsTip())
                .putPoint("midpoint", marks.midpoint())
                .putPoint("target", marks.target())
                .putPoints("skin", marks.skin())
                .put("punctureDistanceMm", marks.punctureDistanceMm())
                .node();
    }

    private static ObjectNode context(CaseDocument document) {
        Context context = document.context();
        Stated node = new Stated()
                .putText("block", context.block())
                .putText("laterality", context.laterality().map(Laterality::word))
                .putObject(
                        "operator",
                        context.operator()
                                .map(person -> new Stated()
                                        .put("name", person.name())
                                        .putText("role", person.role())
                                        .node())
                                .orElseGet(CaseWriter::nothing));
        return BedsideWriter.surroundings(node, document.bedside().surroundings())
                .node();
    }

    private static ObjectNode signature(Signature signature) {
        return new Stated()
                .put("name", signature.name())
                .putText("organization", signature.organization())
                .putText("role", signature.role())
                .putTime("time", signature.time())
                .putObject("incompleteBecause", reasons(signature))
                .node();
    }

    private static ObjectNode reasons(Signature signature) {
        ObjectNode reasons = nothing();
        signature.incompleteBecause().forEach(reasons::put);
        return reasons;
    }
}
