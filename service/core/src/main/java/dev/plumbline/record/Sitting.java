// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.record;

import dev.plumbline.agents.AgentUse;
import dev.plumbline.agents.Dose;
import dev.plumbline.agents.DrugList;
import dev.plumbline.agents.Exceeding;
import dev.plumbline.agents.OtherDoses;
import dev.plumbline.agents.Patient;
import dev.plumbline.procedure.Session;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A session as its cases make it: one dose budget of all their local anaesthetic.
 *
 * @param patient as the first case that states a weight has it
 * @param weightsDiffer the cases state different weights
 * @param exceeding reasons given for going on beyond the site's limit
 */
public record Sitting(Session session, Patient patient, boolean weightsDiffer, List<Exceeding> exceeding) {
    public Sitting {
        exceeding = List.copyOf(exceeding);
    }

    /** From the cases of a session, at least one. Other fluids and additives stand in the cases and count in no limit. */
    public static Sitting of(String id, List<CaseDocument> cases, DrugList drugs) {
        List<Session.LinkedCase> linked =
                cases.stream().map(document -> counted(document, drugs)).toList();
        Map<String, Dose> other = new LinkedHashMap<>();
        cases.forEach(
                document -> otherToday(document).doses().forEach(dose -> other.putIfAbsent(dose.id(), dose.dose())));
        return new Sitting(
                new Session(id, linked, answer(cases), List.copyOf(other.values())),
                patient(cases),
                cases.stream().flatMap(d -> weight(d).stream()).distinct().count() > 1,
                cases.stream()
                        .flatMap(document -> CaseDoses.current(document.bedside()).stream())
                        .flatMap(entry -> entry.exceeding().stream())
                        .toList());
    }

    private static Session.LinkedCase counted(CaseDocument document, DrugList drugs) {
        Session.LinkedCase whole = CaseDoses.linked(document.caseId().orElse(""), document.bedside());
        List<AgentUse> counting = whole.uses().stream()
                .filter(use -> drugs.drug(use.agent().drug()).localAnaesthetic())
                .toList();
        return new Session.LinkedCase(whole.caseId(), counting, whole.injected());
    }

    private static Surroundings.OtherToday otherToday(CaseDocument document) {
        return document.bedside().surroundings().otherToday();
    }

    /** Given in one case is given; asked in one case is asked for all, because the day is the same. */
    private static OtherDoses answer(List<CaseDocument> cases) {
        List<OtherDoses> answers =
                cases.stream().map(document -> otherToday(document).answer()).toList();
        if (answers.contains(OtherDoses.ASKED_GIVEN)) {
            return OtherDoses.ASKED_GIVEN;
        }
        return answers.contains(OtherDoses.ASKED_NONE) ? OtherDoses.ASKED_NONE : OtherDoses.NOT_ASKED;
    }

    private static Patient patient(List<CaseDocument> cases) {
        return cases.stream()
                .filter(document -> weight(document).isPresent())
                .findFirst()
                .orElse(cases.get(0))
                .bedside()
                .surroundings()
                .patient();
    }

    private static Optional<?> weight(CaseDocument document) {
        return document.bedside().surroundings().patient().weight();
    }
}
