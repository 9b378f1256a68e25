// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.record;

import dev.plumbline.agents.AgentEntry;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.procedure.CheckEntry;
import dev.plumbline.procedure.Happening;
import dev.plumbline.procedure.LoggedEvent;
import dev.plumbline.procedure.ProcedureLog;
import dev.plumbline.sight.Seen;
import dev.plumbline.sight.SightStep;
import java.time.OffsetDateTime;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What a case says at the bedside, held against itself, the lists of the site and the clock. Every refusal points into the
 * case document.
 */
public final class CaseCheck {
    private final CaseDocument document;
    private final SiteRules site;
    private final OffsetDateTime now;

    private CaseCheck(CaseDocument document, SiteRules site, OffsetDateTime now) {
        this.document = document;
        this.site = site;
        this.now = now;
    }

    /**
     * Checks the case.
     *
     * @throws Refusal for an unknown drug, check, step or agent, a correction of nothing or of something corrected already,
     *     an event of the future, and an agent in a mixture without its volume
     */
    public static void check(CaseDocument document, SiteRules site, OffsetDateTime now) {
        CaseCheck check = new CaseCheck(document, site, now);
        check.checks();
        check.agents();
        check.otherDoses();
        check.events();
    }

    private void checks() {
        Set<String> known = site.checks().checks().stream().map(c -> c.id()).collect(Collectors.toSet());
        List<CheckEntry> answers = document.bedside().checks();
        for (int i = 0; i < answers.size(); i++) {
            if (!known.contains(answers.get(i).answered().checkId())) {
                throw refused(
                        "/checks/" + i + "/check",
                        "The site has no such check.",
                        "Give one of " + known.stream().sorted().collect(Collectors.joining(", ")) + ".");
            }
            notFuture(answers.get(i).answered().at(), "/checks/" + i + "/at", "This answer");
        }
    }

    private void agents() {
        Set<String> earlier = new HashSet<>();
        Set<String> corrected = new HashSet<>();
        List<AgentEntry> entries = document.bedside().agents();
        for (int i = 0; i < entries.size(); i++) {
            AgentEntry entry = entries.get(i);
            String at = "/agents/" + i;
            entry.corrects().ifPresent(id -> correction(id, earlier, corrected, at));
            drug(at + "/drug", entry.solution().drug());
            for (int j = 0; j < entry.solution().additives().size(); j++) {
                drug(
                        at + "/additives/" + j + "/drug",
                        entry.solution().additives().get(j).drug());
            }
            if (entry.handling().mixture().isPresent()
                    && CaseDoses.portion(entry).ml().signum() == 0) {
                throw new Refusal(new Problem.MissingField(
                        at + "/volumeMl/drawnUp", "Give how much of it is in the mixture, drawn up or planned."));
            }
            earlier.add(entry.id());
        }
    }

    private static void correction(String id, Set<String> earlier, Set<String> corrected, String at) {
        if (!earlier.contains(id)) {
            throw refused(at + "/corrects", "The case has no such entry before this one.", "Give the id of an entry.");
        }
        if (!corrected.add(id)) {
            throw new Refusal(new Problem.Conflict(
                    at + "/corrects", "This entry is corrected already.", "Mend the entry that stands in its place."));
        }
    }

    private void drug(String at, String drug) {
        within(at, () -> site.drugs().drug(drug));
    }

    private void otherDoses() {
        List<Surroundings.OtherDose> doses =
                document.bedside().surroundings().otherToday().doses();
        for (int i = 0; i < doses.size(); i++) {
            drug(
                    "/context/otherLocalAnaestheticToday/doses/" + i + "/drug",
                    doses.get(i).dose().drug());
        }
    }

    private void events() {
        ProcedureLog log = ProcedureLog.EMPTY;
        List<LoggedEvent> events = document.bedside().events();
        for (int i = 0; i < events.size(); i++) {
            LoggedEvent event = events.get(i);
            ProcedureLog before = log;
            log = within("/events/" + i, () -> before.append(event, now));
            what(event.what(), "/events/" + i);
        }
    }

    private void what(Happening what, String at) {
        if (what instanceof Happening.Correction correction) {
            correction.instead().ifPresent(instead -> what(instead, at));
        } else if (what instanceof Happening.Aliquot aliquot) {
            aliquot.agentId().ifPresent(id -> agent(id, at + "/agent"));
        } else if (what instanceof Happening.Sight sight) {
            sight(sight, at);
        }
    }

    private void agent(String id, String at) {
        boolean known = document.bedside().agents().stream()
                .flatMap(entry -> Stream.concat(Stream.of(entry.id()), entry.handling().mixture().stream()))
                .anyMatch(id::equals);
        if (!known) {
            throw refused(at, "The case has no such agent or mixture.", "Enter the agent first, and give its id.");
        }
    }

    private void sight(Happening.Sight sight, String at) {
        if (!sight.seen().in(document.approach())) {
            throw refused(
                    at + "/state",
                    "This is not said " + document.approach().word() + ".",
                    "Give one of "
                            + Seen.all(document.approach()).stream()
                                    .map(Seen::word)
                                    .collect(Collectors.joining(", "))
                            + ".");
        }
        List<String> steps = site.sight().ladder(document.approach()).steps().stream()
                .map(SightStep::id)
                .toList();
        Optional<String> unknown = sight.step().filter(step -> !steps.contains(step));
        if (unknown.isPresent()) {
            throw refused(
                    at + "/step", "The ladder has no such step.", "Give one of " + String.join(", ", steps) + ".");
        }
    }

    private void notFuture(OffsetDateTime time, String at, String what) {
        if (time.isAfter(now.plus(ProcedureLog.CLOCK_TOLERANCE))) {
            throw refused(
                    at,
                    what + " lies in the future of the service's clock.",
                    "Check the clock of the tablet and the date.");
        }
    }

    private static <T> T within(String at, Supplier<T> work) {
        try {
            return work.get();
        } catch (Refusal refusal) {
            throw new Refusal(refusal.problem().under(at));
        }
    }

    private static Refusal refused(String pointer, String detail, String remedy) {
        return new Refusal(new Problem.InvalidValue(pointer, detail, remedy));
    }
}
