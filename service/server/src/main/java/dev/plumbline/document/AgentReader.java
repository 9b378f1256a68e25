// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import dev.plumbline.agents.AgentEntry;
import dev.plumbline.agents.Basis;
import dev.plumbline.agents.Dose;
import dev.plumbline.agents.Exceeding;
import dev.plumbline.agents.Labelled;
import dev.plumbline.agents.Mass;
import dev.plumbline.agents.Route;
import dev.plumbline.agents.Stage;
import dev.plumbline.agents.Volume;
import dev.plumbline.record.Surroundings;
import java.math.BigDecimal;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads one agent as it was entered. */
final class AgentReader {
    private static final int MOST_PARTS = 10_000_000;

    private AgentReader() {}

    static AgentEntry agent(Fields fields) {
        return fields.within(() -> new AgentEntry(
                fields.needText("id", Wording.IDENTIFIER),
                fields.text("corrects", Wording.IDENTIFIER),
                new AgentEntry.Solution(
                        fields.needText("drug", Wording.IDENTIFIER),
                        basis(fields),
                        concentration(fields),
                        fields.objects("additives", CaseObject.ADDITIVE, AgentReader::additive)),
                new AgentEntry.Handling(
                        fields.word("purpose", PURPOSES, Dose.Purpose::word).orElse(Dose.Purpose.BLOCK),
                        route(fields),
                        fields.text("technique", Wording.NAME),
                        fields.text("mixture", Wording.IDENTIFIER)),
                fields.objectOr("volumeMl", CaseObject.VOLUMES, Map.of(), AgentReader::volumes),
                new AgentEntry.Packaging(fields.text("brand", Wording.NAME), fields.text("lot", Wording.NAME)),
                fields.object("exceeding", CaseObject.EXCEEDING).map(AgentReader::exceeding)));
    }

    /** What an agent of the case can be for; other doses of the day have a list of their own. */
    private static final List<Dose.Purpose> PURPOSES =
            List.of(Dose.Purpose.BLOCK, Dose.Purpose.SKIN_INFILTRATION, Dose.Purpose.HYDROLOCATION);

    static Basis basis(Fields fields) {
        return fields.word("basis", List.of(Basis.SALT, Basis.BASE), Basis::word)
                .orElse(Basis.NOT_STATED);
    }

    static Route route(Fields fields) {
        return fields.word("route", List.of(Route.PERINEURAL, Route.FASCIAL_PLANE, Route.INFILTRATION), Route::word)
                .orElse(Route.NOT_STATED);
    }

    private static AgentEntry.Additive additive(Fields fields) {
        return new AgentEntry.Additive(
                fields.needText("drug", Wording.IDENTIFIER), basis(fields), concentration(fields));
    }

    private static Labelled concentration(Fields holder) {
        Fields fields = holder.object("concentration", CaseObject.CONCENTRATION)
                .orElseThrow(() -> holder.missing(
                        "concentration", "it as the label prints it: percent, mgPerMl, microgramsPerMl or oneIn"));
        List<String> given =
                CaseObject.CONCENTRATION.fields().stream().filter(fields::has).toList();
        if (given.size() != 1) {
            throw fields.contradiction(
                    "A concentration is said in exactly one way.",
                    "Give exactly one of " + String.join(", ", CaseObject.CONCENTRATION.fields()) + ".");
        }
        String form = given.get(0);
        return switch (form) {
            case "percent" -> new Labelled(fields.needDecimal(form, Range.PERCENT_IN_VOLUME), Labelled.Form.PERCENT);
            case "mgPerMl" -> new Labelled(fields.needDecimal(form, Range.MG_PER_ML), Labelled.Form.MG_PER_ML);
            case "microgramsPerMl" ->
                new Labelled(fields.needDecimal(form, Range.MICROGRAMS_PER_ML), Labelled.Form.MICROGRAMS_PER_ML);
            default -> new Labelled(BigDecimal.valueOf(fields.needWhole(form, 1, MOST_PARTS)), Labelled.Form.ONE_IN);
        };
    }

    private static Map<Stage, Volume> volumes(Fields fields) {
        Map<Stage, Volume> volumes = new EnumMap<>(Stage.class);
        for (Stage stage : Stage.values()) {
            fields.decimal(stage.word(), Range.VOLUME).ifPresent(ml -> volumes.put(stage, new Volume(ml)));
        }
        return volumes;
    }

    private static Exceeding exceeding(Fields fields) {
        return new Exceeding(
                fields.needText("reason", Wording.REMARK), fields.needText("by", Wording.NAME), fields.needTime("at"));
    }

    static Surroundings.OtherDose otherDose(Fields fields) {
        return new Surroundings.OtherDose(
                fields.needText("id", Wording.IDENTIFIER),
                new Dose(
                        fields.needText("drug", Wording.IDENTIFIER),
                        basis(fields),
                        new Mass(fields.needDecimal("massMg", Range.MASS_MG)),
                        fields.flag("vasoconstrictor").orElse(false),
                        route(fields),
                        fields.text("technique", Wording.NAME),
                        Dose.Purpose.OTHER_TODAY,
                        fields.needTime("at")));
    }

    static Optional<String> word(Basis basis) {
        return Optional.of(basis).filter(said -> said != Basis.NOT_STATED).map(Basis::word);
    }

    static Optional<String> word(Route route) {
        return Optional.of(route).filter(said -> said != Route.NOT_STATED).map(Route::word);
    }
}
