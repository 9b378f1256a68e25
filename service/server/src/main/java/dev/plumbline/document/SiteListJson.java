// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.geometry.Foundation;
import dev.plumbline.geometry.Transducer;
import dev.plumbline.geometry.TransducerCatalogue;
import dev.plumbline.needle.Gauge;
import dev.plumbline.needle.NeedleCatalogue;
import dev.plumbline.needle.StockNeedle;
import dev.plumbline.procedure.BlockList;
import dev.plumbline.procedure.SetUpChecks;

/**
 * What a site has to choose from, as JSON. A person chooses; nothing of it is ever filled in by itself. Every figure comes
 * with what it rests on. Lengths in millimetres, frequencies in megahertz.
 */
public final class SiteListJson {
    private SiteListJson() {}

    /** {@code { "needles": [ .. ] }}. */
    public static ObjectNode needles(NeedleCatalogue catalogue) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        ArrayNode needles = root.putArray("needles");
        for (StockNeedle needle : catalogue.needles()) {
            ObjectNode node = needles.addObject()
                    .put("id", needle.id())
                    .put("tipType", needle.tipType().word())
                    .put("lengthMm", needle.lengthMm())
                    .put("gauge", needle.gauge())
                    .put("echogenic", needle.echogenic());
            catalogue.gauge(needle.gauge()).map(Gauge::nominal).ifPresent(diameters -> {
                node.put("outerDiameterMm", diameters.outerMm()).put("innerDiameterMm", diameters.innerMm());
                foundation(node.putObject("diameterSource"), diameters.foundation());
            });
        }
        return root;
    }

    /** {@code { "transducers": [ .. ] }}. */
    public static ObjectNode transducers(TransducerCatalogue catalogue) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        ArrayNode transducers = root.putArray("transducers");
        for (Transducer transducer : catalogue.transducers()) {
            ObjectNode node = transducers
                    .addObject()
                    .put("id", transducer.id())
                    .put("kind", transducer.kind().word());
            foundation(
                    node.putObject("footprint").put("mm", transducer.footprint().mm()),
                    transducer.footprint().foundation());
            Transducer.Frequency frequency = transducer.frequency();
            foundation(
                    node.putObject("frequency")
                            .put("lowMhz", frequency.lowMhz())
                            .put("highMhz", frequency.highMhz()),
                    frequency.foundation());
            ArrayNode beams = node.putArray("beams");
            transducer.beams().forEach(beam -> beam(beams.addObject(), beam));
        }
        return root;
    }

    /** {@code { "blocks": [ .. ] }}. */
    public static ObjectNode blocks(BlockList list) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        ArrayNode blocks = root.putArray("blocks");
        for (BlockList.Block block : list.blocks()) {
            foundation(
                    blocks.addObject()
                            .put("id", block.id())
                            .put("name", block.name())
                            .put("region", block.region().word())
                            .put("level", block.level())
                            .put("parts", block.parts()),
                    block.foundation());
        }
        return root;
    }

    /** {@code { "checks": [ .. ], "stopMomentHoldsSeconds" }}. */
    public static ObjectNode checks(SetUpChecks set) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        ArrayNode checks = root.putArray("checks");
        set.checks().forEach(check -> checks.addObject().put("id", check.id()).put("text", check.text()));
        return root.put("stopMomentHoldsSeconds", set.stopMomentHolds().toSeconds());
    }

    private static void beam(ObjectNode node, Transducer.BeamThickness beam) {
        node.put("fromDepthMm", beam.fromDepthMm())
                .put("toDepthMm", beam.toDepthMm())
                .put("leastMm", beam.leastMm());
        beam.mostMm().ifPresentOrElse(most -> node.put("mostMm", most), () -> node.putNull("mostMm"));
        foundation(node, beam.foundation());
    }

    private static void foundation(ObjectNode node, Foundation foundation) {
        node.put("standing", foundation.standing().word()).put("text", foundation.text());
    }
}
