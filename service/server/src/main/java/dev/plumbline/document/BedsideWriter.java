// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.agents.Patient;
import dev.plumbline.procedure.CheckEntry;
import dev.plumbline.procedure.Laterality;
import dev.plumbline.procedure.ProcedureContext;
import dev.plumbline.procedure.SetUpChecks;
import dev.plumbline.procedure.SightDetail;
import dev.plumbline.procedure.Supervision;
import dev.plumbline.record.Bedside;
import dev.plumbline.record.Surroundings;
import dev.plumbline.record.TeamMember;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Writes what was said and done around the needle, the mirror of the readers. */
final class BedsideWriter {
    private BedsideWriter() {}

    static void into(Stated document, Bedside bedside) {
        document.putText("session", bedside.session())
                .putObjects("team", bedside.team(), BedsideWriter::member)
                .putObjects("checks", bedside.checks(), BedsideWriter::check)
                .putObjects("events", bedside.events(), EventWriter::event)
                .putObjects("agents", bedside.agents(), AgentWriter::agent)
                .putText("impression", bedside.impression())
                .putObjects(
                        "frames",
                        bedside.frames(),
                        kept -> new Stated()
                                .putObject("frame", CaseWriter.frame(kept.frame()))
                                .put("role", kept.role().word())
                                .node())
                .putObject(
                        "record",
                        new Stated()
                                .putText("sightDetail", bedside.sightDetail().map(SightDetail::word))
                                .node());
    }

    private static ObjectNode member(TeamMember member) {
        return new Stated()
                .put("id", member.id())
                .put("name", member.name())
                .putText("role", member.role())
                .putText("grade", member.grade())
                .putText("supervision", member.supervision().map(Supervision::word))
                .node();
    }

    private static ObjectNode check(CheckEntry entry) {
        return answered(
                new Stated().put("id", entry.id()).put("check", entry.answered().checkId()), entry.answered());
    }

    private static ObjectNode answered(Stated node, SetUpChecks.Answered answered) {
        return node.put("answer", answered.answer().word())
                .putText("reason", answered.reason())
                .put("by", answered.by())
                .putTime("at", answered.at())
                .node();
    }

    /** The fields of the context that are not block, side and operator. */
    static Stated surroundings(Stated context, Surroundings around) {
        said(context, around.said());
        patient(context, around.patient());
        context.putDecimal("heightCm", around.heightCm())
                .putObject("consent", around.consent().map(c -> answered(new Stated(), c)))
                .putObject(
                        "otherLocalAnaestheticToday",
                        Optional.of(around.otherToday())
                                .filter(other -> !other.equals(Surroundings.OtherToday.NOT_ASKED))
                                .map(BedsideWriter::otherToday))
                .putText("orderLaterality", around.orderSide().map(Laterality::word))
                .putText("sideAnswered", around.sideAnswered());
        return around.nothingGiven() ? context.putFlag("nothingGiven", true) : context;
    }

    private static void said(Stated context, ProcedureContext said) {
        List<String> localisation = Arrays.stream(ProcedureContext.Localisation.values())
                .filter(said.localisation()::contains)
                .map(ProcedureContext.Localisation::word)
                .toList();
        context.putText("indication", said.indication())
                .putTexts("localisation", localisation)
                .putText("patientState", said.patientState().map(ProcedureContext.PatientState::word))
                .putText("position", said.position())
                .putText("allergiesAsked", said.allergies().map(ProcedureContext.Allergies::word))
                .putText("allergyText", said.allergyText())
                .putText("coagulation", said.coagulation().map(ProcedureContext.Coagulation::word))
                .putText("baselineNeurology", said.baselineNeurology().map(ProcedureContext.Neurology::word))
                .putText("skinPreparation", said.skinPreparation())
                .putText("ivAccess", said.ivAccess())
                .putText("monitoring", said.monitoring())
                .putTexts("lots", said.lots());
    }

    private static void patient(Stated context, Patient patient) {
        context.putObject(
                        "weight",
                        patient.weight()
                                .map(weight -> new Stated()
                                        .put("kg", weight.kg())
                                        .put("source", weight.source().word())
                                        .node()))
                .putDecimal("idealWeightKg", patient.idealKg())
                .putDecimal("leanWeightKg", patient.leanKg())
                .put("ageYears", patient.ageYears());
    }

    private static ObjectNode otherToday(Surroundings.OtherToday other) {
        return new Stated()
                .put("answer", other.answer().word())
                .putObjects("doses", other.doses(), AgentWriter::otherDose)
                .node();
    }
}
