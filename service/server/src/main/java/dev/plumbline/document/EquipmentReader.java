// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import com.fasterxml.jackson.databind.JsonNode;
import dev.plumbline.geometry.Probe;
import dev.plumbline.geometry.Side;
import dev.plumbline.geometry.SkinBeyondProbe;
import dev.plumbline.needle.Needle;
import dev.plumbline.needle.NeedleWish;
import dev.plumbline.needle.TipType;
import java.util.List;

/** Reads what is stated about probe and needle. */
final class EquipmentReader {
    private static final int LEAST_GAUGE = 1;
    private static final int MOST_GAUGE = 40;

    private EquipmentReader() {}

    static Probe probe(Fields document) {
        return document.objectOr("probe", CaseObject.PROBE, Probe.NOTHING_STATED, EquipmentReader::read);
    }

    private static Probe read(Fields probe) {
        return new Probe(
                probe.word("kind", List.of(Probe.Kind.values()), Probe.Kind::word),
                probe.number("footprintMm", Range.LENGTH),
                probe.point("midpoint"),
                probe.word("needleSide", List.of(Side.values()), Side::word),
                probe.number("beamThicknessMm", Range.LENGTH),
                probe.value("skinBeyondProbe").map(skin -> skin(skin, probe.pointer("skinBeyondProbe"))),
                probe.number("housingLengthMm", Range.LENGTH),
                probe.number("housingHalfThicknessMm", Range.LENGTH),
                probe.flag("imageInverted"),
                probe.number("arcRadiusMm", Range.LENGTH),
                probe.number("speedOfSoundMPerS", Range.SPEED_OF_SOUND));
    }

    private static SkinBeyondProbe skin(JsonNode json, String pointer) {
        if (json.isTextual()) {
            if (!json.textValue().equals("flat")) {
                throw Fields.refusal(pointer, "\"flat\", an object with radiusMm, or one with dropMm and atMm");
            }
            return new SkinBeyondProbe.Flat();
        }
        Fields fields = new Fields(json, pointer, CaseObject.SKIN_BEYOND_PROBE);
        boolean round = fields.has("radiusMm");
        if (round == (fields.has("dropMm") || fields.has("atMm"))) {
            throw fields.contradiction(
                    "The skin beyond the probe is either round or falls away straight.",
                    "Give radiusMm alone, or dropMm and atMm, or \"flat\".");
        }
        return round
                ? new SkinBeyondProbe.Round(fields.needNumber("radiusMm", Range.LENGTH))
                : new SkinBeyondProbe.Drop(
                        fields.needNumber("dropMm", Range.SIGNED), fields.needNumber("atMm", Range.LENGTH));
    }

    static Needle needle(Fields document) {
        return document.objectOr(
                "needle",
                CaseObject.NEEDLE,
                Needle.NOTHING_STATED,
                needle -> new Needle(
                        needle.whole("gauge", LEAST_GAUGE, MOST_GAUGE),
                        needle.number("lengthMm", Range.LENGTH),
                        needle.flag("echogenic"),
                        needle.object("wish", CaseObject.NEEDLE_WISH)
                                .map(EquipmentReader::wish)
                                .filter(wish -> !wish.equals(NeedleWish.ANY))));
    }

    private static NeedleWish wish(Fields wish) {
        return new NeedleWish(
                wish.list("tipTypes", (tip, at) -> Fields.word(tip, at, List.of(TipType.values()), TipType::word)),
                wish.list("gauges", (gauge, at) -> Fields.whole(gauge, at, LEAST_GAUGE, MOST_GAUGE)),
                wish.flag("echogenic"));
    }
}
