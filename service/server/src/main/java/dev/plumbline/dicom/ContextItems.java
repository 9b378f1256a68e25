// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** PL1 CONTEXT: what surrounds the block; weights and other doses of the day stand with the agents. */
final class ContextItems {
    private static final Code CONTEXT = Codes.own("CONTEXT");
    private static final Code ALLERGIES = Codes.own("ALLERGIES");

    private final List<FieldItem> fields;

    ContextItems(RecordTimes times) {
        fields = List.of(
                text("indication", "INDICATION"),
                text("position", "POSITION"),
                text("skinPreparation", "SKIN-PREP"),
                text("ivAccess", "IV-ACCESS"),
                text("monitoring", "MONITORING"),
                new CheckItems(times).consent(),
                word("patientState", "PT-STATE", "patient states"),
                word("coagulation", "COAG", "coagulation"),
                word("baselineNeurology", "NEURO", "neurological baseline"),
                allergies(),
                FieldItem.words("localisation", Relation.CONTAINS, Codes.own("LOCALISE"), "localisation"),
                FieldItem.number("heightCm", Relation.CONTAINS, Codes.of("LN", "8302-2"), "cm"),
                FieldItem.number("ageYears", Relation.CONTAINS, Codes.own("AGE"), "a"),
                FieldItem.texts("lots", Relation.CONTAINS, Codes.own("LOT")),
                FieldItem.word("orderLaterality", Relation.CONTAINS, Codes.own("ORDER-SIDE"), "laterality", "sides"),
                text("sideAnswered", "SIDE-ANSWERED"));
    }

    private static FieldItem text(String field, String concept) {
        return FieldItem.text(field, Relation.CONTAINS, Codes.own(concept));
    }

    private static FieldItem word(String field, String concept, String set) {
        return FieldItem.word(field, Relation.CONTAINS, Codes.own(concept), set);
    }

    /** What they are stands under the answer, or in its place where nobody said whether they were asked for. */
    private static FieldItem allergies() {
        FieldItem asked = word("allergiesAsked", "ALLERGIES", "allergies");
        return new FieldItem(
                (stated, items) -> {
                    Optional<String> said =
                            Optional.ofNullable(stated.get("allergyText")).map(JsonNode::asText);
                    List<ContentItem> answer = FieldItem.write(List.of(asked), stated);
                    if (answer.isEmpty()) {
                        said.ifPresent(text -> items.add(ContentItem.text(Relation.CONTAINS, ALLERGIES, text)));
                    } else {
                        items.add(answer.get(0)
                                .with(said.stream()
                                        .map(text -> ContentItem.text(Relation.HAS_PROPERTIES, Concepts.COMMENT, text))
                                        .toList()));
                    }
                },
                (holder, stated) -> holder.first(ALLERGIES).ifPresent(item -> {
                    boolean answered = item.value() instanceof ItemValue.Coded;
                    if (answered) {
                        asked.reading().read(holder, stated);
                    }
                    (answered ? item.textOf(Concepts.COMMENT) : holder.textOf(ALLERGIES))
                            .ifPresent(text -> stated.put("allergyText", text));
                }));
    }

    Optional<ContentItem> item(JsonNode context) {
        List<ContentItem> items = new ArrayList<>(FieldItem.write(fields, context));
        return items.isEmpty()
                ? Optional.empty()
                : Optional.of(ContentItem.container(CONTEXT).with(items));
    }

    void read(ContentItem details, ObjectNode context) {
        details.first(CONTEXT).ifPresent(container -> FieldItem.read(fields, container, context));
    }
}
