// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.agents.AgentEntry;
import dev.plumbline.agents.AgentUse;
import dev.plumbline.agents.Mass;
import dev.plumbline.agents.Weight;
import dev.plumbline.procedure.Session;
import dev.plumbline.record.Bedside;
import dev.plumbline.record.CaseDoses;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * PL1 AGENTS: weights, other doses of the day, and every agent as it was entered. An entry in whose place another stands has
 * a concept of its own, so that no reader adds it to what was administered.
 */
final class AgentItems {
    private static final Code AGENTS = Codes.own("AGENTS");
    private static final Code WEIGHT = Codes.of("LN", "29463-7");
    private static final Code WEIGHT_BASIS = Codes.own("WEIGHT-BASIS");
    private static final Code OTHER = Codes.own("OTHER-LA");
    private static final Code OTHER_DOSE = Codes.own("OTHER-DOSE");
    private static final Code ADMINISTERED = Codes.dcm("122083");
    private static final Code NOT_GIVEN = Codes.own("AGENT-NOTGIVEN");
    private static final Code EARLIER = Codes.own("AGENT-EARLIER");
    private static final Code ADDITIVE = Codes.own("ADDITIVE");
    static final Code MASS = Codes.sct("118538004");
    private static final Code ACKNOWLEDGED = Codes.own("LIMIT-ACK");
    private static final Code DRUG_OF_THE_SITE = Codes.own("RX-OTHER");
    private static final Code DRUG_ID = Codes.own("DRUG-ID");
    private static final String OTHER_FIELD = "otherLocalAnaestheticToday";
    private static final String[] DRUGS = {"drugs, SCT", "adjuvants, SCT", "agents"};

    private static final FieldItem ID = FieldItem.text("id", Relation.HAS_PROPERTIES, Codes.own("ENTRY-ID"));
    private static final FieldItem BASIS = property("basis", "DOSE-BASIS", "dose bases");
    private static final FieldItem ROUTE =
            FieldItem.word("route", Relation.HAS_PROPERTIES, Codes.sct("410675002"), "routes");
    private static final FieldItem TECHNIQUE =
            FieldItem.text("technique", Relation.HAS_PROPERTIES, Codes.own("TECHNIQUE"));
    private static final List<FieldItem> BEFORE_MASS = List.of(
            ID,
            FieldItem.text("corrects", Relation.HAS_PROPERTIES, Codes.own("CORRECTS")),
            FieldItem.within(
                    "volumeMl",
                    List.of(
                            volume("planned", Codes.own("VOL-PLANNED")),
                            volume("drawnUp", Codes.own("VOL-DRAWN")),
                            volume("given", Codes.dcm("122091")),
                            volume("discarded", Codes.own("VOL-DISCARD")))),
            LabelItems.CONCENTRATION);
    private static final List<FieldItem> BEFORE_ADDITIVES = List.of(
            BASIS,
            ROUTE,
            property("purpose", "PURPOSE", "agent purposes"),
            TECHNIQUE,
            FieldItem.text("mixture", Relation.HAS_PROPERTIES, Codes.own("MIXTURE")));
    private static final List<FieldItem> PACKAGING = List.of(
            FieldItem.text("brand", Relation.HAS_PROPERTIES, Codes.dcm("111529")),
            FieldItem.text("lot", Relation.HAS_PROPERTIES, Codes.own("LOT")));
    private static final List<FieldItem> DOSE = List.of(
            ID,
            FieldItem.number("massMg", Relation.HAS_PROPERTIES, MASS, "mg"),
            FieldItem.raised("vasoconstrictor", Relation.HAS_PROPERTIES, Codes.own("VASOCONSTRICTOR")),
            BASIS,
            ROUTE,
            TECHNIQUE);
    private static final List<FieldItem> PATIENT = List.of(
            weight(),
            weightFor("idealWeightKg", "WB-IDEAL"),
            weightFor("leanWeightKg", "WB-LEAN"),
            FieldItem.raised("nothingGiven", Relation.CONTAINS, Codes.own("NOTHING-GIVEN")));

    private final RecordTimes times;

    AgentItems(RecordTimes times) {
        this.times = times;
    }

    private static FieldItem property(String field, String concept, String set) {
        return FieldItem.word(field, Relation.HAS_PROPERTIES, Codes.own(concept), set);
    }

    private static FieldItem volume(String field, Code concept) {
        return FieldItem.number(field, Relation.HAS_PROPERTIES, concept, "mL");
    }

    private static FieldItem weight() {
        Code source = Codes.own("WEIGHT-SOURCE");
        return new FieldItem(
                (stated, items) -> {
                    JsonNode weight = stated.path("weight");
                    if (weight.has("kg")) {
                        items.add(kilograms(weight.get("kg"))
                                .with(FieldItem.coded(
                                        Relation.HAS_PROPERTIES,
                                        source,
                                        weight.get("source").asText(),
                                        "weight sources")));
                    }
                },
                (holder, stated) -> holder.named(WEIGHT)
                        .filter(item -> item.first(source).isPresent())
                        .findFirst()
                        .ifPresent(item -> {
                            ObjectNode weight = stated.putObject("weight");
                            FieldItem.measured(item).ifPresent(m -> FieldItem.put(weight, "kg", m));
                            item.codeOf(source)
                                    .flatMap(code -> Codes.wordOf("weight sources", code))
                                    .ifPresent(word -> weight.put("source", word));
                        }));
    }

    private static FieldItem weightFor(String field, String basis) {
        return new FieldItem(
                (stated, items) -> {
                    if (stated.has(field)) {
                        items.add(kilograms(stated.get(field))
                                .with(ContentItem.code(Relation.HAS_PROPERTIES, WEIGHT_BASIS, Codes.own(basis))));
                    }
                },
                (holder, stated) -> holder.named(WEIGHT)
                        .filter(item -> item.codeOf(WEIGHT_BASIS)
                                .filter(Codes.own(basis)::means)
                                .isPresent())
                        .findFirst()
                        .flatMap(FieldItem::measured)
                        .ifPresent(m -> FieldItem.put(stated, field, m)));
    }

    private static ContentItem kilograms(JsonNode value) {
        return Measurement.plain(Relation.CONTAINS, WEIGHT, DecimalText.stated(value.decimalValue(), Codes.ucum("kg")));
    }

    /** @param json the case document, which says the same as {@code bedside} */
    Optional<ContentItem> item(JsonNode json, Bedside bedside) {
        JsonNode context = json.path("context");
        List<ContentItem> items = new ArrayList<>(FieldItem.write(PATIENT, context));
        JsonNode other = context.path(OTHER_FIELD);
        if (items.isEmpty() && !other.isObject() && bedside.agents().isEmpty()) {
            return Optional.empty();
        }
        items.add(FieldItem.coded(
                Relation.CONTAINS, OTHER, other.path("answer").asText("notAsked"), "other local anaesthetic"));
        other.path("doses").forEach(dose -> items.add(otherDose(dose)));
        Session.LinkedCase linked = CaseDoses.linked("", bedside);
        Map<String, AgentUse> current = current(bedside, linked);
        for (int i = 0; i < bedside.agents().size(); i++) {
            AgentEntry entry = bedside.agents().get(i);
            Optional<Mass> given = Optional.ofNullable(current.get(entry.id()))
                    .flatMap(use -> linked.given(use)
                            .map(volume -> Mass.in(volume, use.agent().concentration())));
            items.add(agent(
                    json.path("agents").get(i),
                    current.containsKey(entry.id()),
                    given.filter(mass -> mass.mg().signum() > 0),
                    bedside.surroundings().patient().weight()));
        }
        return Optional.of(ContentItem.container(AGENTS).with(items));
    }

    /** By the id of the entry that stands; the uses come in the order of those entries. */
    private static Map<String, AgentUse> current(Bedside bedside, Session.LinkedCase linked) {
        Map<String, AgentUse> current = new HashMap<>();
        List<AgentEntry> standing = CaseDoses.current(bedside);
        for (int i = 0; i < standing.size(); i++) {
            current.put(standing.get(i).id(), linked.uses().get(i));
        }
        return current;
    }

    private ContentItem otherDose(JsonNode dose) {
        ContentItem item = drug(Relation.CONTAINS, OTHER_DOSE, dose, DOSE, List.of());
        return times.at(item, dose, "at");
    }

    private ContentItem agent(JsonNode entry, boolean stands, Optional<Mass> given, Optional<Weight> weight) {
        List<ContentItem> children = new ArrayList<>(FieldItem.write(BEFORE_MASS, entry));
        given.ifPresent(mass -> amounts(mass, weight, children));
        children.addAll(FieldItem.write(BEFORE_ADDITIVES, entry));
        entry.path("additives")
                .forEach(additive -> children.add(drug(
                        Relation.HAS_PROPERTIES,
                        ADDITIVE,
                        additive,
                        List.of(LabelItems.CONCENTRATION, BASIS),
                        List.of())));
        if (entry.has("exceeding")) {
            children.add(acknowledged(entry.get("exceeding")));
        }
        Code concept = stands ? given.isPresent() ? ADMINISTERED : NOT_GIVEN : EARLIER;
        return drug(Relation.CONTAINS, concept, entry, PACKAGING, children);
    }

    private static void amounts(Mass mass, Optional<Weight> weight, List<ContentItem> children) {
        children.add(Measurement.plain(Relation.HAS_PROPERTIES, MASS, DecimalText.stated(mass.mg(), Codes.ucum("mg"))));
        weight.map(Weight::kg)
                .ifPresent(kg -> children.add(Measurement.plain(
                                Relation.HAS_PROPERTIES,
                                Codes.own("DOSE-KG"),
                                DecimalText.measured(mass.mgPerKg(kg).doubleValue(), Codes.ucum("mg/kg")))
                        .with(ContentItem.code(Relation.HAS_PROPERTIES, WEIGHT_BASIS, Codes.own("WB-ACTUAL")))));
    }

    private static ContentItem drug(
            Relation relation, Code concept, JsonNode entry, List<FieldItem> fields, List<ContentItem> before) {
        List<ContentItem> children = new ArrayList<>(before);
        children.addAll(FieldItem.write(fields, entry));
        return drug(relation, concept, entry.get("drug").asText(), children);
    }

    /** A drug with what is said of it; one without a code by its word. */
    static ContentItem drug(Relation relation, Code concept, String drug, List<ContentItem> said) {
        ContentItem named = FieldItem.coded(relation, concept, drug, DRUGS);
        List<ContentItem> children = new ArrayList<>(said);
        if (named.value() instanceof ItemValue.Text own) {
            named = ContentItem.code(relation, concept, DRUG_OF_THE_SITE);
            children.add(ContentItem.text(Relation.HAS_PROPERTIES, DRUG_ID, own.text()));
        }
        return named.with(children);
    }

    private ContentItem acknowledged(JsonNode exceeding) {
        ContentItem item = ContentItem.text(
                        Relation.HAS_PROPERTIES,
                        ACKNOWLEDGED,
                        exceeding.get("reason").asText())
                .with(ContentItem.person(
                        Relation.HAS_PROPERTIES,
                        Codes.own("DONE-BY"),
                        exceeding.get("by").asText()));
        return times.at(item, exceeding, "at");
    }

    void read(ContentItem details, ObjectNode json, ObjectNode context) {
        details.first(AGENTS).ifPresent(container -> {
            FieldItem.read(PATIENT, container, context);
            other(container, context);
            List<ContentItem> entries = container.children().stream()
                    .filter(item -> item.isNamed(ADMINISTERED) || item.isNamed(NOT_GIVEN) || item.isNamed(EARLIER))
                    .toList();
            if (!entries.isEmpty()) {
                ArrayNode agents = json.putArray("agents");
                entries.forEach(item -> entry(item, agents.addObject()));
            }
        });
    }

    private void other(ContentItem container, ObjectNode context) {
        Optional<String> answer = container
                .codeOf(OTHER)
                .flatMap(code -> Codes.wordOf("other local anaesthetic", code))
                .filter(word -> !word.equals("notAsked"));
        if (answer.isEmpty()) {
            return;
        }
        ObjectNode other = context.putObject(OTHER_FIELD).put("answer", answer.get());
        List<ContentItem> doses = container.named(OTHER_DOSE).toList();
        if (!doses.isEmpty()) {
            ArrayNode list = other.putArray("doses");
            doses.forEach(item -> {
                ObjectNode dose = list.addObject();
                readDrug(item, dose);
                FieldItem.read(DOSE, item, dose);
                times.read(item, dose, "at");
            });
        }
    }

    private void entry(ContentItem item, ObjectNode entry) {
        readDrug(item, entry);
        FieldItem.read(BEFORE_MASS, item, entry);
        FieldItem.read(BEFORE_ADDITIVES, item, entry);
        FieldItem.read(PACKAGING, item, entry);
        List<ContentItem> additives = item.named(ADDITIVE).toList();
        if (!additives.isEmpty()) {
            ArrayNode list = entry.putArray("additives");
            additives.forEach(additive -> {
                ObjectNode node = list.addObject();
                readDrug(additive, node);
                FieldItem.read(List.of(LabelItems.CONCENTRATION, BASIS), additive, node);
            });
        }
        item.first(ACKNOWLEDGED).ifPresent(acknowledged -> {
            ObjectNode exceeding = entry.putObject("exceeding");
            item.textOf(ACKNOWLEDGED).ifPresent(reason -> exceeding.put("reason", reason));
            FieldItem.person("by", Relation.HAS_PROPERTIES, Codes.own("DONE-BY"))
                    .reading()
                    .read(acknowledged, exceeding);
            times.read(acknowledged, exceeding, "at");
        });
    }

    private static void readDrug(ContentItem item, ObjectNode node) {
        item.textOf(DRUG_ID).or(() -> FieldItem.word(item, DRUGS)).ifPresent(drug -> node.put("drug", drug));
    }
}
