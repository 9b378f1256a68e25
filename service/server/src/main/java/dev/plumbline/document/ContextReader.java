// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.procedure.Laterality;
import dev.plumbline.record.Context;
import dev.plumbline.record.Signature;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads what the case is about and who stands for it. */
final class ContextReader {
    private ContextReader() {}

    static Context context(Fields document) {
        return document.objectOr(
                        "context",
                        CaseObject.CONTEXT,
                        Context.NOTHING_STATED,
                        fields -> new Context(
                                fields.text("block", Wording.NAME),
                                laterality(fields),
                                fields.object("operator", CaseObject.PERSON)
                                        .map(person -> new Context.Person(
                                                person.needText("name", Wording.NAME),
                                                person.text("role", Wording.NAME)))))
                .withOrder(OrderJson.read(document));
    }

    private static Optional<Laterality> laterality(Fields fields) {
        return side(fields, "laterality");
    }

    /** One side; both are two cases. */
    static Optional<Laterality> side(Fields fields, String name) {
        if (fields.value(name).filter(l -> "bilateral".equals(l.textValue())).isPresent()) {
            throw new Refusal(new Problem.InvalidValue(
                    fields.pointer(name),
                    "A case is about one side; \"bilateral\" is two cases.",
                    "Write two cases, one with \"right\" and one with \"left\"."));
        }
        return fields.word(name, List.of(Laterality.values()), Laterality::word);
    }

    static Optional<Signature> signature(Fields document) {
        return document.object("signature", CaseObject.SIGNATURE)
                .map(fields -> new Signature(
                        fields.needText("name", Wording.NAME),
                        fields.text("organization", Wording.NAME),
                        fields.text("role", Wording.NAME),
                        fields.needTime("time"),
                        fields.objectOr(
                                "incompleteBecause", CaseObject.INCOMPLETE_BECAUSE, Map.of(), ContextReader::reasons)));
    }

    private static Map<String, String> reasons(Fields fields) {
        Map<String, String> reasons = new HashMap<>();
        for (String item : CaseObject.INCOMPLETE_BECAUSE.fields()) {
            fields.text(item, Wording.REMARK).ifPresent(reason -> reasons.put(item, reason));
        }
        return reasons;
    }
}
