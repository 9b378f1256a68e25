// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import dev.plumbline.agents.OtherDoses;
import dev.plumbline.agents.Patient;
import dev.plumbline.agents.Weight;
import dev.plumbline.procedure.ProcedureContext;
import dev.plumbline.procedure.ProcedureContext.Allergies;
import dev.plumbline.procedure.ProcedureContext.Coagulation;
import dev.plumbline.procedure.ProcedureContext.Localisation;
import dev.plumbline.procedure.ProcedureContext.Neurology;
import dev.plumbline.procedure.ProcedureContext.PatientState;
import dev.plumbline.record.Surroundings;
import java.util.List;
import java.util.Set;

/** Reads what the context says beside block, side and operator. */
final class SurroundingsReader {
    private static final int OLDEST_YEARS = 130;

    private SurroundingsReader() {}

    static Surroundings surroundings(Fields document) {
        return document.objectOr("context", CaseObject.CONTEXT, Surroundings.NOTHING_STATED, SurroundingsReader::read);
    }

    private static Surroundings read(Fields fields) {
        return new Surroundings(
                said(fields),
                new Patient(
                        fields.object("weight", CaseObject.WEIGHT).map(SurroundingsReader::weight),
                        fields.decimal("idealWeightKg", Range.WEIGHT_KG),
                        fields.decimal("leanWeightKg", Range.WEIGHT_KG),
                        fields.whole("ageYears", 0, OLDEST_YEARS)),
                fields.decimal("heightCm", Range.HEIGHT_CM),
                fields.object("consent", CaseObject.CONSENT).map(consent -> BedsideReader.answered(consent, "consent")),
                fields.objectOr(
                        "otherLocalAnaestheticToday",
                        CaseObject.OTHER_LOCAL_ANAESTHETIC,
                        Surroundings.OtherToday.NOT_ASKED,
                        SurroundingsReader::otherToday),
                fields.flag("nothingGiven").orElse(false),
                ContextReader.side(fields, "orderLaterality"),
                fields.text("sideAnswered", Wording.REMARK));
    }

    private static ProcedureContext said(Fields fields) {
        return new ProcedureContext(
                fields.text("indication", Wording.REMARK),
                Set.copyOf(fields.words("localisation", List.of(Localisation.values()), Localisation::word)),
                fields.word("patientState", List.of(PatientState.values()), PatientState::word),
                fields.text("position", Wording.REMARK),
                fields.word("allergiesAsked", List.of(Allergies.values()), Allergies::word),
                fields.text("allergyText", Wording.REMARK),
                fields.word("coagulation", List.of(Coagulation.values()), Coagulation::word),
                fields.word("baselineNeurology", List.of(Neurology.values()), Neurology::word),
                fields.text("skinPreparation", Wording.REMARK),
                fields.text("ivAccess", Wording.REMARK),
                fields.text("monitoring", Wording.REMARK),
                fields.texts("lots", Wording.NAME));
    }

    private static Weight weight(Fields fields) {
        return new Weight(
                fields.needDecimal("kg", Range.WEIGHT_KG),
                fields.needWord("source", List.of(Weight.Source.values()), Weight.Source::word));
    }

    private static Surroundings.OtherToday otherToday(Fields fields) {
        return fields.within(() -> new Surroundings.OtherToday(
                fields.needWord("answer", List.of(OtherDoses.values()), OtherDoses::word),
                BedsideReader.entries(fields, "doses", CaseObject.OTHER_DOSE, AgentReader::otherDose)));
    }
}
