// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.dicom.ItemValue.Measured;
import dev.plumbline.dicom.ItemValue.Text;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** One event of the log, both ways: PL1 EVENTS, and for notes of the view PL1 SIGHT. */
final class EventItems {
    private static final Code EVENT = Codes.own("EVENT");
    private static final Code STEP = Codes.own("SIGHT-STEP");
    private static final Code SEEN = Codes.own("SIGHT-SEEN");
    private static final Code STEP_OF_THE_SITE = Codes.own("SS-OTHER");
    private static final Code HYDROLOCATION = Codes.own("EVT-HYDRO");
    private static final Code PRESSURE = Codes.own("RESIST-PRESSURE");
    private static final Code DEVICE = Codes.own("RESIST-DEVICE");
    private static final Code PLACE = Codes.own("LOG-PLACE");
    private static final String KINDS = "events";
    private static final String STATES = "sight states";
    static final String[] COMPLICATIONS = {"complications", "complications, SCT", "complications of injection, SCT"};

    private final RecordTimes times;
    private final List<FieldItem> fields;

    EventItems(RecordTimes times) {
        this.times = times;
        fields = List.of(
                text("id", "EVENT-ID"),
                times.moment("enteredAt", Codes.own("ENTERED-AT"), Codes.own("ENTERED-STATED")),
                person("enteredBy", "ENTERED-BY"),
                FieldItem.raised("enteredLater", Relation.HAS_PROPERTIES, Codes.own("ENTERED-LATER")),
                text("corrects", "CORRECTS"),
                text("reason", "REASON"),
                FieldItem.persons("names", Relation.HAS_PROPERTIES, Codes.own("STOP-BY")),
                word("side", "SIDE-SPOKEN", "laterality", "sides"),
                word("block", "BLOCK-SPOKEN", "blocks"),
                flag("markSeen", "MARK-SEEN"),
                flag("consentSeen", "CONSENT-SEEN"),
                FieldItem.number("punctureSite", Relation.HAS_PROPERTIES, Codes.own("PUNCTURE-SITE"), "1"),
                flag("blood", "BLOOD"),
                FieldItem.number("volumeMl", Relation.HAS_PROPERTIES, Codes.dcm("122091"), "mL"),
                text("fluid", "FLUID"),
                text("agent", "AGENT-REF"),
                word("spread", "SPREAD", "spread"),
                resistance(),
                word("pain", "PAIN", "pain"),
                word("sign", "STOP-SIGN", "stop signs"),
                word("what", "CHANGED", "changes"),
                FieldItem.word("complication", Relation.HAS_PROPERTIES, Codes.sct("116224001"), COMPLICATIONS),
                person("by", "LOOKED-BY"),
                person("to", "HANDED-TO"),
                text("finding", "FINDING"),
                FieldItem.text("text", Relation.HAS_PROPERTIES, Concepts.COMMENT));
    }

    private static FieldItem text(String field, String concept) {
        return FieldItem.text(field, Relation.HAS_PROPERTIES, Codes.own(concept));
    }

    private static FieldItem person(String field, String concept) {
        return FieldItem.person(field, Relation.HAS_PROPERTIES, Codes.own(concept));
    }

    private static FieldItem flag(String field, String concept) {
        return FieldItem.flag(field, Relation.HAS_PROPERTIES, Codes.own(concept));
    }

    private static FieldItem word(String field, String concept, String... sets) {
        return FieldItem.word(field, Relation.HAS_PROPERTIES, Codes.own(concept), sets);
    }

    /** As felt, a code; as read from a device, kPa as a number, any other unit in the figures and words of the device. */
    private static FieldItem resistance() {
        FieldItem felt = word("resistance", "RESIST", "resistance");
        return new FieldItem(
                (stated, items) -> {
                    JsonNode said = stated.path("resistance");
                    if (said.isObject()) {
                        items.add(pressure(said)
                                .with(ContentItem.text(
                                        Relation.HAS_PROPERTIES,
                                        DEVICE,
                                        said.get("device").asText())));
                    } else {
                        felt.writing().write(stated, items);
                    }
                },
                (holder, stated) -> {
                    felt.reading().read(holder, stated);
                    holder.first(PRESSURE).ifPresent(item -> pressure(item, stated.putObject("resistance")));
                });
    }

    private static ContentItem pressure(JsonNode said) {
        BigDecimal value = said.get("value").decimalValue();
        String unit = said.get("unit").asText();
        return unit.equals("kPa")
                ? Measurement.plain(Relation.HAS_PROPERTIES, PRESSURE, DecimalText.stated(value, Codes.ucum(unit)))
                : ContentItem.text(Relation.HAS_PROPERTIES, PRESSURE, value.toPlainString() + " " + unit);
    }

    private static void pressure(ContentItem item, ObjectNode read) {
        if (item.value() instanceof Text text) {
            int space = Math.max(0, text.text().indexOf(' '));
            try {
                read.put("value", new BigDecimal(text.text().substring(0, space)));
            } catch (NumberFormatException e) {
                throw Fault.malformed("The injection pressure in the record is no number with its unit");
            }
            read.put("unit", text.text().substring(space + 1));
        } else {
            Optional<Measured> measured = FieldItem.measured(item);
            measured.ifPresent(m -> FieldItem.put(read, "value", m));
            measured.ifPresent(m -> read.put("unit", m.unit().value()));
        }
        item.textOf(DEVICE).ifPresent(device -> read.put("device", device));
    }

    ContentItem event(JsonNode event) {
        boolean hydrolocation = event.path("hydrolocation").asBoolean();
        Code kind = hydrolocation
                ? HYDROLOCATION
                : Codes.ofWord(KINDS, event.get("kind").asText());
        return timed(ContentItem.code(Relation.CONTAINS, EVENT, kind), event, List.of());
    }

    /** @param place how many events of the log came before it */
    ContentItem sight(JsonNode event, int place) {
        Code seen = Codes.ofWord(STATES, event.get("state").asText());
        List<ContentItem> more = new ArrayList<>();
        Optional<String> step = Optional.ofNullable(event.get("step")).map(JsonNode::asText);
        if (step.isPresent()) {
            more.add(ContentItem.code(Relation.HAS_PROPERTIES, SEEN, seen));
            more.add(ContentItem.text(Relation.HAS_PROPERTIES, Codes.own("STEP-ID"), step.get()));
        }
        more.add(Measurement.plain(
                Relation.HAS_PROPERTIES, PLACE, DecimalText.stated(BigDecimal.valueOf(place), Codes.ucum("1"))));
        ContentItem item = step.map(id -> ContentItem.code(Relation.CONTAINS, STEP, step(id)))
                .orElseGet(() -> ContentItem.code(Relation.CONTAINS, SEEN, seen));
        return timed(item, event, more);
    }

    /** Several steps may share a code, so the site's own word stands beside it. */
    static Code step(String id) {
        for (Codes.Entry entry : Codes.set("sight steps").entries()) {
            for (JsonNode step : entry.line().path("steps")) {
                if (step.asText().equals(id)) {
                    return entry.code();
                }
            }
        }
        return STEP_OF_THE_SITE;
    }

    private ContentItem timed(ContentItem item, JsonNode event, List<ContentItem> more) {
        List<ContentItem> children = new ArrayList<>(FieldItem.write(fields, event));
        children.addAll(more);
        return times.at(item.with(children), event, "happenedAt");
    }

    ObjectNode readEvent(ContentItem item, ObjectNode event) {
        if (item.value() instanceof ItemValue.Coded coded) {
            if (HYDROLOCATION.means(coded.code())) {
                event.put("kind", "aliquot").put("hydrolocation", true);
            } else {
                Codes.wordOf(KINDS, coded.code()).ifPresent(kind -> event.put("kind", kind));
            }
        }
        return common(item, event);
    }

    ObjectNode readSight(ContentItem item, ObjectNode event) {
        event.put("kind", "sightStep");
        Optional<Code> seen = item.isNamed(SEEN) && item.value() instanceof ItemValue.Coded coded
                ? Optional.of(coded.code())
                : item.codeOf(SEEN);
        seen.flatMap(code -> Codes.wordOf(STATES, code)).ifPresent(word -> event.put("state", word));
        item.textOf(Codes.own("STEP-ID")).ifPresent(step -> event.put("step", step));
        return common(item, event);
    }

    private ObjectNode common(ContentItem item, ObjectNode event) {
        FieldItem.read(fields, item, event);
        times.read(item, event, "happenedAt");
        return event;
    }

    static boolean isSight(ContentItem item) {
        return item.isNamed(STEP) || item.isNamed(SEEN);
    }

    /** Where a note of the view stands in the log. */
    static int place(ContentItem item) {
        return item.first(PLACE)
                .flatMap(FieldItem::measured)
                .map(m -> (int) m.value())
                .orElse(Integer.MAX_VALUE);
    }
}
