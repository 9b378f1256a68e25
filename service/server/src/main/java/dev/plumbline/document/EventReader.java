// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import dev.plumbline.agents.Volume;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.procedure.Happening;
import dev.plumbline.procedure.LoggedEvent;
import dev.plumbline.procedure.Pain;
import dev.plumbline.procedure.Resistance;
import dev.plumbline.procedure.Spread;
import dev.plumbline.procedure.StopMoment;
import dev.plumbline.sight.Seen;
import dev.plumbline.sight.StopSign;
import java.util.List;
import java.util.Optional;

/** Reads one event of the log. */
final class EventReader {
    private static final int MOST_SITES = 20;

    private final Fields fields;

    private EventReader(Fields fields) {
        this.fields = fields;
    }

    static LoggedEvent event(Fields fields) {
        return fields.within(() -> new EventReader(fields).read());
    }

    private LoggedEvent read() {
        EventKind kind = fields.needWord("kind", List.of(EventKind.values()), EventKind::word);
        Optional<String> corrects = fields.text("corrects", Wording.IDENTIFIER);
        for (String field : CaseObject.EVENT.fields()) {
            boolean why = field.equals("reason") && corrects.isPresent();
            if (fields.has(field) && !kind.knows(field) && !why) {
                throw new Refusal(new Problem.ContradictoryFields(
                        fields.pointer(field),
                        "The field " + field + " does not go with an event of the kind " + kind.word() + ".",
                        "Remove it, or give another kind."));
            }
        }
        for (String field : kind.needs()) {
            if (!fields.has(field)) {
                throw fields.missing(field, "it with an event of the kind " + kind.word());
            }
        }
        return new LoggedEvent(
                fields.needText("id", Wording.IDENTIFIER),
                corrected(kind, corrects),
                fields.needTime("happenedAt"),
                fields.needTime("enteredAt"),
                fields.needText("enteredBy", Wording.NAME),
                fields.flag("enteredLater").orElse(false));
    }

    /** An event that corrects another stands in its place; a bare correction puts nothing there. */
    private Happening corrected(EventKind kind, Optional<String> corrects) {
        if (kind == EventKind.CORRECTION) {
            return new Happening.Correction(
                    fields.needText("corrects", Wording.IDENTIFIER),
                    Optional.empty(),
                    fields.text("reason", Wording.REMARK));
        }
        Happening what = what(kind);
        boolean ownReason = kind.knows("reason");
        return corrects.<Happening>map(id -> new Happening.Correction(
                        id, Optional.of(what), ownReason ? Optional.empty() : fields.text("reason", Wording.REMARK)))
                .orElse(what);
    }

    private Happening what(EventKind kind) {
        return switch (kind) {
            case STOP_MOMENT -> stopMoment();
            case PUNCTURE -> new Happening.Puncture(site());
            case REDIRECTION -> new Happening.Redirection();
            case PASS -> new Happening.Pass();
            case SIGHT_STEP ->
                new Happening.Sight(
                        fields.needWord("state", List.of(Seen.values()), Seen::word),
                        fields.text("step", Wording.IDENTIFIER));
            case DOPPLER -> new Happening.Doppler(fields.text("finding", Wording.REMARK));
            case ASPIRATION -> new Happening.Aspiration(fields.needFlag("blood"));
            case ALIQUOT -> aliquot();
            case STOP ->
                new Happening.Halt(
                        fields.word("sign", List.of(StopSign.values()), StopSign::word),
                        fields.text("reason", Wording.REMARK));
            case PLAN_CHANGED -> new Happening.PlanChanged(fields.needText("reason", Wording.REMARK));
            case CONTEXT_CHANGED ->
                new Happening.ContextChanged(fields.needWord(
                        "what", List.of(Happening.ContextChanged.What.values()), Happening.ContextChanged.What::word));
            case NEEDLE_OUT -> new Happening.NeedleOut();
            case COMPLICATION ->
                new Happening.Complication(
                        fields.needText("complication", Wording.NAME), fields.text("text", Wording.REMARK));
            case COMPLICATIONS_LOOKED_FOR ->
                new Happening.LookedForComplications(
                        fields.text("by", Wording.NAME).orElseGet(() -> fields.needText("enteredBy", Wording.NAME)));
            case NEAR_MISS -> new Happening.NearMiss(fields.needText("text", Wording.REMARK));
            case HAND_OVER -> new Happening.HandOver(fields.needText("to", Wording.NAME));
            case CORRECTION -> throw new IllegalArgumentException("A correction has nothing in it.");
        };
    }

    private Happening stopMoment() {
        return new Happening.Stopped(
                new StopMoment(
                        fields.texts("names", Wording.NAME),
                        fields.needText("block", Wording.NAME),
                        ContextReader.side(fields, "side").orElseThrow(),
                        fields.needFlag("markSeen"),
                        fields.needFlag("consentSeen")),
                site());
    }

    private int site() {
        return fields.whole("punctureSite", 1, MOST_SITES).orElse(1);
    }

    private Happening aliquot() {
        return new Happening.Aliquot(
                new Volume(fields.needDecimal("volumeMl", Range.VOLUME_GIVEN)),
                fields.text("fluid", Wording.NAME),
                fields.text("agent", Wording.IDENTIFIER),
                fields.flag("hydrolocation").orElse(false),
                fields.word("spread", List.of(Spread.values()), Spread::word),
                resistance(),
                fields.word("pain", List.of(Pain.values()), Pain::word));
    }

    private Optional<Resistance> resistance() {
        if (fields.value("resistance").filter(value -> value.isObject()).isPresent()) {
            return fields.object("resistance", CaseObject.RESISTANCE)
                    .map(read -> new Resistance.Measured(
                            read.needDecimal("value", Range.PRESSURE),
                            read.needText("unit", Wording.NAME),
                            read.needText("device", Wording.NAME)));
        }
        return fields.word("resistance", List.of(Resistance.Word.values()), Resistance.Word::word)
                .map(Resistance.Felt::new);
    }
}
