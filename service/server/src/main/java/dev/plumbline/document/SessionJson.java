// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.agents.Dose;
import dev.plumbline.agents.DoseBudget;
import dev.plumbline.agents.DoseShares;
import dev.plumbline.agents.Exceeding;
import dev.plumbline.agents.FormularyRow;
import dev.plumbline.agents.Mass;
import dev.plumbline.agents.OtherDoses;
import dev.plumbline.agents.Stage;
import dev.plumbline.procedure.Session;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.SiteRules;
import dev.plumbline.record.Sitting;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.OffsetDateTime;
import java.util.List;

/** A session with its cases and its one dose budget, at each stage that can still be thought over, and as given. */
public final class SessionJson {
    /** Shown digits; comparisons use the exact value. */
    private static final int DIGITS = 6;

    private static final List<Stage> STAGES = List.of(Stage.PLANNED, Stage.DRAWN_UP, Stage.GIVEN);

    private final Sitting sitting;
    private final SiteRules site;
    private final OffsetDateTime now;

    private SessionJson(Sitting sitting, SiteRules site, OffsetDateTime now) {
        this.sitting = sitting;
        this.site = site;
        this.now = now;
    }

    /** The session as an answer. */
    public static ObjectNode of(String session, List<CaseDocument> cases, SiteRules site, OffsetDateTime now) {
        Sitting sitting = Sitting.of(session, cases, site.drugs());
        ObjectNode answer = new Stated().put("session", session).node();
        ArrayNode ids = answer.putArray("cases");
        cases.forEach(document -> ids.add(new Stated()
                .putText("caseId", document.caseId())
                .putText("block", document.context().block())
                .putText("laterality", document.context().laterality().map(side -> side.word()))
                .node()));
        answer.set("doseBudget", new SessionJson(sitting, site, now).budget());
        answer.set("cautions", AnswerJson.cautions());
        return answer;
    }

    /** The budget alone, for a case that names no session. */
    static ObjectNode budget(CaseDocument document, SiteRules site, OffsetDateTime now) {
        return new SessionJson(Sitting.of("", List.of(document), site.drugs()), site, now).budget();
    }

    private ObjectNode budget() {
        Session session = sitting.session();
        Stated node = new Stated()
                .put("otherLocalAnaestheticToday", session.otherDoses().word());
        node.putFlag("formularyInForce", site.formulary().inForce())
                .putText("noVerdictBecause", site.formulary().whyNotInForce());
        sitting.patient()
                .weight()
                .ifPresent(weight -> node.put("weightKg", weight.kg())
                        .put("weightSource", weight.source().word()));
        if (sitting.weightsDiffer()) {
            node.putTexts("doubts", List.of("weightsDiffer"));
        }
        ObjectNode stages = new Stated().node();
        for (Stage stage : STAGES) {
            stages.set(stage.word(), stage(stage));
        }
        node.putObject("stages", stages)
                .putObjects("exceeding", sitting.exceeding(), SessionJson::exceeding)
                .putTexts("givenDiffersFromLog", differing())
                .putTexts("cautions", cautions());
        return node.node();
    }

    private List<String> differing() {
        return sitting.session().cases().stream()
                .flatMap(linked -> linked.givenDiffersFromLog().stream())
                .toList();
    }

    private List<String> cautions() {
        return sitting.session().otherDoses() == OtherDoses.NOT_ASKED
                ? List.of(DoseShares.CAUTION, DoseShares.OTHER_UNKNOWN)
                : List.of(DoseShares.CAUTION);
    }

    private ObjectNode stage(Stage stage) {
        DoseBudget budget = sitting.session().budget(stage, now);
        DoseShares shares = budget.shares(site.formulary(), sitting.patient(), now);
        ObjectNode node = new Stated().node();
        ArrayNode totals = node.putArray("totals");
        budget.totals().forEach((key, mass) -> totals.add(total(key, mass)));
        ArrayNode parts = node.putArray("shares");
        shares.parts().forEach(part -> parts.add(part(part)));
        node.set(
                "totalSharePercent",
                shares.total()
                        .map(SessionJson::percent)
                        .map(SessionJson::value)
                        .orElseGet(() -> absent(whyNone(shares))));
        node.put("exceeds", shares.exceeds());
        node.put("reminder", shares.reminds(stage));
        node.put("reasonNeeded", shares.exceeds() && sitting.exceeding().isEmpty());
        return node;
    }

    private static String whyNone(DoseShares shares) {
        return shares.parts().stream()
                .map(DoseShares.Part::verdict)
                .filter(DoseShares.Verdict.None.class::isInstance)
                .map(verdict -> ((DoseShares.Verdict.None) verdict).why().word())
                .findFirst()
                .orElse("nothingEntered");
    }

    private ObjectNode total(String key, Mass mass) {
        String[] drugAndBasis = key.split("/", 2);
        ObjectNode node = new Stated()
                .put("drug", drugAndBasis[0])
                .put("basis", drugAndBasis[1])
                .put("massMg", shown(mass.mg()))
                .node();
        node.set(
                "mgPerKg",
                sitting.patient()
                        .weight()
                        .map(weight -> value(shown(mass.mgPerKg(weight.kg()))))
                        .orElseGet(() -> absent("weightMissing")));
        return node;
    }

    private static ObjectNode part(DoseShares.Part part) {
        Dose dose = part.dose();
        Stated node = new Stated()
                .put("drug", dose.drug())
                .put("basis", dose.basis().word())
                .put("massMg", shown(dose.mass().mg()))
                .putFlag("vasoconstrictor", dose.vasoconstrictor())
                .put("route", dose.route().word())
                .put("purpose", dose.purpose().word());
        if (part.verdict() instanceof DoseShares.Verdict.Share share) {
            FormularyRow row = share.row();
            node.putObject("sharePercent", value(percent(share.share())))
                    .put("limitMg", shown(share.limit().mg()))
                    .put("row", row.id())
                    .put("country", row.origin().country())
                    .put("source", row.origin().source())
                    .put("edition", row.origin().edition());
        } else {
            node.putObject(
                    "sharePercent",
                    absent(((DoseShares.Verdict.None) part.verdict()).why().word()));
        }
        return node.node();
    }

    private static ObjectNode exceeding(Exceeding exceeding) {
        return new Stated()
                .put("reason", exceeding.reason())
                .put("by", exceeding.by())
                .putTime("at", exceeding.at())
                .node();
    }

    private static BigDecimal percent(BigDecimal share) {
        return shown(share.movePointRight(2));
    }

    /** For people; what decides is the exact value. */
    static BigDecimal shown(BigDecimal value) {
        return value.scale() > DIGITS ? value.setScale(DIGITS, RoundingMode.HALF_UP) : value;
    }

    static ObjectNode value(BigDecimal value) {
        return new Stated().put("value", value).node();
    }

    static ObjectNode absent(String reason) {
        ObjectNode node = new Stated().put("reason", reason).node();
        node.putNull("value");
        return node;
    }
}
