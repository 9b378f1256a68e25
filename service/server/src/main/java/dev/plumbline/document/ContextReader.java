// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.record.Context;
import dev.plumbline.record.Laterality;
import dev.plumbline.record.Signature;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Optional;

/** Reads what the case is about and who stands for it. */
final class ContextReader {
    private static final String TIME = "a time with offset, such as 2026-01-05T10:15:00+01:00";

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
                                        person.needText("name", Wording.NAME), person.text("role", Wording.NAME)))));
    }

    private static Optional<Laterality> laterality(Fields fields) {
        if (fields.value("laterality")
                .filter(l -> "bilateral".equals(l.textValue()))
                .isPresent()) {
            throw new Refusal(new Problem.InvalidValue(
                    fields.pointer("laterality"),
                    "A case is about one side; \"bilateral\" is two cases.",
                    "Write two cases, one with \"right\" and one with \"left\"."));
        }
        return fields.word("laterality", List.of(Laterality.values()), Laterality::word);
    }

    static Optional<Signature> signature(Fields document) {
        return document.object("signature", CaseObject.SIGNATURE)
                .map(fields -> new Signature(
                        fields.needText("name", Wording.NAME),
                        fields.text("organization", Wording.NAME),
                        fields.text("role", Wording.NAME),
                        time(fields)));
    }

    /** As far as a DICOM date and time can carry it: four-digit year, offset of whole minutes (PS3.5, 6.2, DT). */
    private static OffsetDateTime time(Fields fields) {
        String text = fields.needText("time", Wording.NAME);
        try {
            OffsetDateTime time = OffsetDateTime.parse(text);
            int offset = time.getOffset().getTotalSeconds();
            if (time.getYear() < 1900 || time.getYear() > 9999 || offset % 60 != 0 || !inUse(time.getOffset())) {
                throw Fields.refusal(fields.pointer("time"), TIME);
            }
            return time;
        } catch (DateTimeParseException e) {
            throw Fields.refusal(fields.pointer("time"), TIME);
        }
    }

    /** Source: DICOM PS3.5, 6.2, DT: offsets from -1200 to +1400. */
    private static boolean inUse(ZoneOffset offset) {
        return -12 * 3600 <= offset.getTotalSeconds() && offset.getTotalSeconds() <= 14 * 3600;
    }
}
