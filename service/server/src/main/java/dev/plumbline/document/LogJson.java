// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.agents.AgentEntry;
import dev.plumbline.agents.AgentUse;
import dev.plumbline.agents.Drug;
import dev.plumbline.agents.Mass;
import dev.plumbline.agents.Mixture;
import dev.plumbline.agents.Stage;
import dev.plumbline.agents.Volume;
import dev.plumbline.agents.Weight;
import dev.plumbline.procedure.Completeness;
import dev.plumbline.procedure.Complications;
import dev.plumbline.procedure.Derived;
import dev.plumbline.procedure.Elapsed;
import dev.plumbline.procedure.Laterality;
import dev.plumbline.procedure.LogCheck;
import dev.plumbline.procedure.LoggedEvent;
import dev.plumbline.procedure.ProcedureLog;
import dev.plumbline.procedure.SetUpChecks;
import dev.plumbline.procedure.SideCheck;
import dev.plumbline.procedure.TipAtInjection;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.CaseDoses;
import dev.plumbline.record.SigningCheck;
import dev.plumbline.record.SiteRules;
import dev.plumbline.record.Surroundings;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What follows from what was kept at the bedside: figures, contradictions, doses, and what is missing. */
public final class LogJson {
    private final CaseDocument document;
    private final Facts facts;
    private final ProcedureLog log;

    private LogJson(CaseDocument document, Facts facts) {
        this.document = document;
        this.facts = facts;
        this.log = document.bedside().log();
    }

    /**
     * What is told beside the case.
     *
     * @param patientKnown the frame names the patient
     * @param imageSide the side that the frame states
     * @param received when each event came in by our clock, by its id; only of events that came in one by one
     */
    public record Facts(
            SiteRules site,
            boolean patientKnown,
            Optional<Laterality> imageSide,
            Map<String, Instant> received,
            OffsetDateTime now) {
        public Facts {
            received = Map.copyOf(received);
        }
    }

    /** The answer. */
    public static ObjectNode of(CaseDocument document, Facts facts) {
        return new LogJson(document, facts).answer();
    }

    private ObjectNode answer() {
        Derived derived = Derived.of(log);
        Stated node = new Stated()
                .putText("caseId", document.caseId())
                .putText("session", document.bedside().session())
                .put("passes", derived.passes())
                .put("redirections", derived.redirections())
                .putObject("timeUnderSkinSec", elapsed(derived.underSkin()))
                .putObject("timeTipUnseenSec", elapsed(derived.tipUnseen()))
                .put("injectedMl", derived.injected().ml())
                .putText("tipSeenAtInjection", TipAtInjection.of(log).map(TipAtInjection::word))
                .putObjects("standing", log.standing(), EventWriter::event)
                .putObjects("contradictions", contradictions(), LogJson::flag)
                .putObjects("clockDifferences", different(), this::clockDifference)
                .putObjects("checks", checks(), LogJson::check)
                .putObject("side", side())
                .putObject("complications", complications())
                .putObjects("agents", CaseDoses.current(document.bedside()), this::agent)
                .putObjects("mixtures", mixtures(), mixture -> mixture)
                .putTexts("weightDoubts", weightDoubts())
                .putObject("doseBudget", SessionJson.budget(document, facts.site(), facts.now()))
                .putObject("completeness", completeness());
        ObjectNode answer = node.node();
        answer.set("cautions", AnswerJson.cautions());
        return answer;
    }

    private static ObjectNode elapsed(Elapsed elapsed) {
        return elapsed instanceof Elapsed.Known known
                ? SessionJson.value(
                        BigDecimal.valueOf(known.duration().toMillis(), 3).stripTrailingZeros())
                : SessionJson.absent(((Elapsed.Unknown) elapsed).reason().word());
    }

    private List<LogCheck.Flag> contradictions() {
        Map<String, Volume> drawnUp = new HashMap<>();
        for (AgentUse use : CaseDoses.linked("", document.bedside()).uses()) {
            use.volume(Stage.DRAWN_UP).ifPresent(volume -> drawnUp.put(use.id(), volume));
        }
        return LogCheck.flags(
                log,
                new LogCheck.Beside(
                        document.context().block(),
                        document.context().laterality(),
                        facts.site().checks().stopMomentHolds(),
                        drawnUp));
    }

    private static ObjectNode flag(LogCheck.Flag flag) {
        return new Stated()
                .put("kind", flag.what().word())
                .put("event", flag.eventId())
                .node();
    }

    /** Events whose clock differs from ours by more than they can take to arrive; shown, never corrected. */
    private List<LoggedEvent> different() {
        return document.bedside().events().stream()
                .filter(event -> facts.received().containsKey(event.id()))
                .filter(event -> difference(event).abs().compareTo(Duration.ofSeconds(2)) > 0)
                .toList();
    }

    private Duration difference(LoggedEvent event) {
        return ProcedureLog.clockDifference(
                event, facts.received().getOrDefault(event.id(), Instant.EPOCH).atOffset(ZoneOffset.UTC));
    }

    private ObjectNode clockDifference(LoggedEvent event) {
        return new Stated()
                .put("event", event.id())
                .put(
                        "enteredMinusReceivedSec",
                        BigDecimal.valueOf(difference(event).toMillis(), 3))
                .node();
    }

    private List<SetUpChecks.Line> checks() {
        return facts.site()
                .checks()
                .lines(document.bedside().checks().stream()
                        .map(entry -> entry.answered())
                        .toList());
    }

    private static ObjectNode check(SetUpChecks.Line line) {
        Stated node = new Stated()
                .put("check", line.check().id())
                .put("text", line.check().text())
                .put("answer", line.word());
        line.answered()
                .ifPresent(answered -> node.putText("reason", answered.reason())
                        .put("by", answered.by())
                        .putTime("at", answered.at()));
        return node.node();
    }

    private ObjectNode side() {
        SideCheck side = SigningCheck.side(document, facts.imageSide());
        ObjectNode said = new Stated().node();
        side.said().forEach((who, word) -> said.put(who, word.word()));
        return new Stated()
                .putObject("said", said)
                .putFlag("disagrees", side.disagrees())
                .putText("answered", side.answered())
                .node();
    }

    private ObjectNode complications() {
        Complications known = Complications.of(log);
        if (known instanceof Complications.NoneNoticed none) {
            return new Stated()
                    .putTime("lookedUntil", none.until())
                    .put("lookedBy", none.by())
                    .put("text", none.text())
                    .node();
        }
        if (known instanceof Complications.Noticed noticed) {
            return new Stated()
                    .putObjects("noticed", noticed.events(), EventWriter::event)
                    .node();
        }
        return new Stated().put("text", "Not recorded.").node();
    }

    private ObjectNode agent(AgentEntry entry) {
        Optional<Drug> drug = facts.site().drugs().drugs().stream()
                .filter(d -> d.id().equals(entry.solution().drug()))
                .findFirst();
        List<String> doubts = drug
                .flatMap(d -> d.doubt(entry.solution().concentration().concentration()))
                .stream()
                .map(Drug.Doubt::word)
                .toList();
        Stated node = new Stated()
                .put("id", entry.id())
                .put("drug", entry.solution().drug())
                .put("basis", entry.solution().basis().word())
                .put("mgPerMl", entry.solution().concentration().concentration().mgPerMl())
                .putObject("volumeMl", volumes(entry))
                .putObject("massMg", masses(entry))
                .putObjects("additives", entry.solution().additives(), additive -> additive(entry, additive))
                .putTexts("doubts", doubts);
        return node.node();
    }

    private static ObjectNode volumes(AgentEntry entry) {
        Stated node = new Stated();
        for (Stage stage : Stage.values()) {
            Optional.ofNullable(entry.volumes().get(stage)).ifPresent(volume -> node.put(stage.word(), volume.ml()));
        }
        return node.node();
    }

    private static ObjectNode masses(AgentEntry entry) {
        AgentUse use = entry.use(entry.id());
        Stated node = new Stated();
        for (Stage stage : Stage.values()) {
            use.mass(stage).ifPresent(mass -> node.put(stage.word(), SessionJson.shown(mass.mg())));
        }
        return node.node();
    }

    private static ObjectNode additive(AgentEntry entry, AgentEntry.Additive additive) {
        Stated micrograms = new Stated();
        for (Stage stage : Stage.values()) {
            Optional.ofNullable(entry.volumes().get(stage))
                    .map(volume -> Mass.in(volume, additive.concentration().concentration()))
                    .ifPresent(mass -> micrograms.put(stage.word(), SessionJson.shown(mass.micrograms())));
        }
        return new Stated()
                .put("drug", additive.drug())
                .put("microgramsPerMl", additive.concentration().concentration().microgramsPerMl())
                .putObject("micrograms", micrograms.node())
                .node();
    }

    /** Agents in one syringe, with the concentrations that they have together. */
    private List<ObjectNode> mixtures() {
        Map<String, List<Mixture.Portion>> portions = new LinkedHashMap<>();
        for (AgentEntry entry : CaseDoses.current(document.bedside())) {
            entry.handling()
                    .mixture()
                    .ifPresent(name -> portions.computeIfAbsent(name, n -> new ArrayList<>())
                            .add(new Mixture.Portion(entry.solution().agent(), CaseDoses.portion(entry))));
        }
        return portions.entrySet().stream()
                .map(entry -> mixture(entry.getKey(), Mixture.of(entry.getValue())))
                .toList();
    }

    private static ObjectNode mixture(String name, Mixture mixture) {
        return new Stated()
                .put("mixture", name)
                .put("volumeMl", mixture.volume().ml())
                .putObjects(
                        "contents",
                        mixture.contents(),
                        content -> new Stated()
                                .put("drug", content.drug())
                                .put("basis", content.basis().word())
                                .put("massMg", SessionJson.shown(content.mass().mg()))
                                .put(
                                        "mgPerMl",
                                        SessionJson.shown(
                                                content.concentration().mgPerMl()))
                                .node())
                .node();
    }

    private List<String> weightDoubts() {
        Surroundings around = document.bedside().surroundings();
        return around
                .patient()
                .weight()
                .flatMap(weight -> around.heightCm().flatMap(weight::doubtBesideHeight))
                .map(Weight.Doubt::word)
                .stream()
                .toList();
    }

    private ObjectNode completeness() {
        List<Completeness.Missing> missing =
                SigningCheck.missing(document, facts.site().completeness(), facts.patientKnown());
        return new Stated()
                .putFlag("requiredToSign", SigningCheck.applies(document, facts.site()))
                .putFlag("signable", missing.stream().noneMatch(Completeness.Missing::blocks))
                .putObjects("missing", missing, LogJson::missing)
                .node();
    }

    private static ObjectNode missing(Completeness.Missing missing) {
        Completeness.Item item = missing.item();
        return new Stated()
                .put("item", item.id())
                .put("text", item.text())
                .put("answer", SetUpChecks.NOT_RECORDED)
                .put("pointer", SigningCheck.place(item.id()))
                .putFlag("requiredToSign", item.requiredToSign())
                .put("agreement", item.agreement().word())
                .putText("reason", missing.reason())
                .node();
    }
}
