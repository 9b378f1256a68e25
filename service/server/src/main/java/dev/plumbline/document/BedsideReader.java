// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.procedure.CheckEntry;
import dev.plumbline.procedure.SetUpChecks;
import dev.plumbline.procedure.SightDetail;
import dev.plumbline.procedure.Supervision;
import dev.plumbline.record.Bedside;
import dev.plumbline.record.TeamMember;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/** Reads what was said and done around the needle. */
final class BedsideReader {
    private BedsideReader() {}

    static Bedside bedside(Fields document) {
        return new Bedside(
                document.text("session", Wording.IDENTIFIER),
                entries(document, "team", CaseObject.TEAM_MEMBER, BedsideReader::member),
                entries(document, "checks", CaseObject.CHECK, BedsideReader::check),
                entries(document, "events", CaseObject.EVENT, EventReader::event),
                entries(document, "agents", CaseObject.AGENT, AgentReader::agent),
                SurroundingsReader.surroundings(document),
                document.text("impression", Wording.REMARK),
                document.object("record", CaseObject.RECORD).flatMap(BedsideReader::sightDetail),
                List.of());
    }

    /** Entries with an id of their own each. */
    static <T> List<T> entries(Fields document, String name, CaseObject kind, Function<Fields, T> reading) {
        Set<String> ids = new HashSet<>();
        return document.objects(name, kind, fields -> {
            T entry = reading.apply(fields);
            if (!ids.add(fields.needText("id", Wording.IDENTIFIER))) {
                throw new Refusal(new Problem.InvalidValue(
                        fields.pointer("id"), "Two entries have the same id.", "Give each entry an id of its own."));
            }
            return entry;
        });
    }

    private static TeamMember member(Fields fields) {
        return new TeamMember(
                fields.needText("id", Wording.IDENTIFIER),
                fields.needText("name", Wording.NAME),
                fields.text("role", Wording.NAME),
                fields.text("grade", Wording.NAME),
                fields.word("supervision", List.of(Supervision.values()), Supervision::word));
    }

    private static CheckEntry check(Fields fields) {
        return new CheckEntry(
                fields.needText("id", Wording.IDENTIFIER),
                answered(fields, fields.needText("check", Wording.IDENTIFIER)));
    }

    /** An answer with its person and time; not done needs its reason. */
    static SetUpChecks.Answered answered(Fields fields, String check) {
        return fields.within(() -> new SetUpChecks.Answered(
                check,
                fields.needWord("answer", List.of(SetUpChecks.Answer.values()), SetUpChecks.Answer::word),
                fields.text("reason", Wording.REMARK),
                fields.needText("by", Wording.NAME),
                fields.needTime("at")));
    }

    private static Optional<SightDetail> sightDetail(Fields fields) {
        return fields.word("sightDetail", List.of(SightDetail.values()), SightDetail::word);
    }
}
