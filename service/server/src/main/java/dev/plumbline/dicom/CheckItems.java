// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** PL1 CHECKS and consent: each an answer with its person, time and reason; what nobody answered is not there. */
record CheckItems(RecordTimes times) {
    private static final Code CHECKS = Codes.own("CHECKS");
    private static final Code OF_THE_SITE = Codes.own("CK-OTHER");
    private static final Code CONSENT = Codes.own("CONSENT");
    private static final String STATES = "check states";
    private static final String KNOWN = "set-up checks";
    private static final List<FieldItem> ANSWER = List.of(
            FieldItem.text("reason", Relation.HAS_PROPERTIES, Codes.own("REASON")),
            FieldItem.person("by", Relation.HAS_PROPERTIES, Codes.own("DONE-BY")));
    private static final FieldItem ID = FieldItem.text("id", Relation.HAS_PROPERTIES, Codes.own("ENTRY-ID"));
    private static final FieldItem IN_WORDS = FieldItem.text("check", Relation.HAS_PROPERTIES, Codes.own("CHECK-ID"));

    Optional<ContentItem> checks(JsonNode answers) {
        List<ContentItem> items = new ArrayList<>();
        answers.forEach(answer -> items.add(check(answer)));
        return items.isEmpty()
                ? Optional.empty()
                : Optional.of(ContentItem.container(CHECKS).with(items));
    }

    private ContentItem check(JsonNode answer) {
        Optional<Code> code = Codes.forWord(KNOWN, answer.get("check").asText()).map(Codes.Entry::code);
        List<FieldItem> fields = new ArrayList<>(List.of(ID));
        if (code.isEmpty()) {
            fields.add(IN_WORDS);
        }
        fields.addAll(ANSWER);
        return answered(code.orElse(OF_THE_SITE), answer, fields);
    }

    FieldItem consent() {
        return new FieldItem(
                (stated, items) -> {
                    if (stated.has("consent")) {
                        items.add(answered(CONSENT, stated.get("consent"), ANSWER));
                    }
                },
                (holder, stated) -> holder.first(CONSENT).ifPresent(item -> answer(item, stated.putObject("consent"))));
    }

    private ContentItem answered(Code concept, JsonNode answer, List<FieldItem> fields) {
        Code state = Codes.ofWord(STATES, answer.get("answer").asText());
        return times.at(
                ContentItem.code(Relation.CONTAINS, concept, state).with(FieldItem.write(fields, answer)),
                answer,
                "at");
    }

    private void answer(ContentItem item, ObjectNode answer) {
        FieldItem.word(item, STATES).ifPresent(word -> answer.put("answer", word));
        FieldItem.read(ANSWER, item, answer);
        times.read(item, answer, "at");
    }

    void read(ContentItem details, ObjectNode json) {
        details.first(CHECKS).ifPresent(container -> {
            ArrayNode answers = json.putArray("checks");
            container.children().forEach(item -> {
                ObjectNode answer = answers.addObject();
                item.name().flatMap(code -> Codes.wordOf(KNOWN, code)).ifPresent(word -> answer.put("check", word));
                FieldItem.read(List.of(ID, IN_WORDS), item, answer);
                answer(item, answer);
            });
        });
    }
}
