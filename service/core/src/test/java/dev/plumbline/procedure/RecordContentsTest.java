// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.procedure;

import static dev.plumbline.procedure.Events.TEN;
import static dev.plumbline.procedure.Events.aliquot;
import static dev.plumbline.procedure.Events.puncture;
import static dev.plumbline.procedure.Events.sight;
import static dev.plumbline.procedure.Events.stop;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.plumbline.agents.Patient;
import dev.plumbline.agents.Volume;
import dev.plumbline.needle.Needle;
import dev.plumbline.problem.Refusal;
import dev.plumbline.record.Context;
import dev.plumbline.record.Laterality;
import dev.plumbline.sight.Seen;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

class RecordContentsTest {
    private static final Happening.Aliquot TO_FIND_THE_TIP = new Happening.Aliquot(
            Volume.ofMl("1"),
            "saline",
            Optional.empty(),
            true,
            Spread.TARGET,
            new Resistance.Felt(Resistance.Word.EASY),
            Pain.NONE);

    private static Presence.Facts facts(boolean noneGiven, ProcedureLog log, Complications complications) {
        return new Presence.Facts(
                false,
                false,
                noneGiven,
                Context.NOTHING_STATED,
                Patient.UNKNOWN,
                ProcedureContext.NOTHING_STATED,
                Needle.NOTHING_STATED,
                List.of(),
                log,
                complications);
    }

    @Test
    void anEmptyCaseHoldsNothing() {
        assertThat(Presence.of(facts(false, ProcedureLog.EMPTY, new Complications.NotRecorded())))
                .isEmpty();
    }

    @Test
    void injectingWithAspirationSpreadAndPainIsSeenInTheLog() {
        ProcedureLog log = new Events()
                .add(0, stop(Laterality.RIGHT))
                .add(10, puncture())
                .add(20, new Happening.Aspiration(false))
                .add(30, aliquot("5"))
                .log();
        assertThat(Presence.of(facts(false, log, new Complications.NoneNoticed(TEN, "Doe^Jo"))))
                .containsExactlyInAnyOrder(
                        "stopMoment", "aspirationAndSpread", "pain", "resistance", "time", "complications");
    }

    @Test
    void aSecondPunctureSiteNeedsAStopMomentOfItsOwn() {
        ProcedureLog log = new Events()
                .add(0, stop(Laterality.RIGHT))
                .add(10, puncture())
                .add(20, new Happening.Puncture(2))
                .log();
        assertThat(Presence.of(facts(false, log, new Complications.NotRecorded())))
                .doesNotContain("stopMoment");
    }

    @Test
    void nothingGivenAnswersWhatAnInjectionWould() {
        assertThat(Presence.of(facts(true, ProcedureLog.EMPTY, new Complications.NotRecorded())))
                .containsExactlyInAnyOrder("agents", "aspirationAndSpread", "pain", "resistance");
        ProcedureLog injected = new Events().add(0, aliquot("1")).log();
        assertThat(Presence.of(facts(true, injected, new Complications.NotRecorded())))
                .as("the log contradicts it")
                .doesNotContain("agents", "aspirationAndSpread");
    }

    @Test
    void aNeedleIsGaugeAndLength() {
        Presence.Facts gaugeOnly = new Presence.Facts(
                true,
                true,
                false,
                new Context(Optional.of("axillaryBrachialPlexus"), Optional.of(Laterality.RIGHT), Optional.empty()),
                Patient.UNKNOWN,
                ProcedureContext.NOTHING_STATED,
                new Needle(OptionalInt.of(22), OptionalDouble.empty(), Optional.empty()),
                List.of(),
                ProcedureLog.EMPTY,
                new Complications.NotRecorded());
        assertThat(Presence.of(gaugeOnly)).containsExactlyInAnyOrder("patient", "consent", "block", "side");
    }

    @Test
    void everySurroundingThatIsSaidIsPresent() {
        ProcedureContext said = new ProcedureContext(
                Optional.of("hand surgery"),
                java.util.Set.of(ProcedureContext.Localisation.ULTRASOUND),
                Optional.of(ProcedureContext.PatientState.AWAKE),
                Optional.of("supine"),
                Optional.of(ProcedureContext.Allergies.NONE),
                Optional.empty(),
                Optional.of(ProcedureContext.Coagulation.NO_CONCERN),
                Optional.of(ProcedureContext.Neurology.NORMAL),
                Optional.of("chlorhexidine"),
                Optional.of("left hand"),
                Optional.of("ECG, pulse oximetry"),
                List.of("L-1"));
        Presence.Facts facts = new Presence.Facts(
                false,
                false,
                false,
                Context.NOTHING_STATED,
                Patient.UNKNOWN,
                said,
                Needle.NOTHING_STATED,
                List.of(),
                ProcedureLog.EMPTY,
                new Complications.NotRecorded());
        assertThat(Presence.of(facts))
                .containsExactlyInAnyOrder(
                        "indication",
                        "localisation",
                        "patientState",
                        "position",
                        "allergies",
                        "coagulation",
                        "baselineNeurology",
                        "skinPreparation",
                        "ivAccess",
                        "monitoring",
                        "lots");
    }

    @Test
    void noneIsSaidOnlyWithATimeAndAName() {
        Complications.NoneNoticed none = new Complications.NoneNoticed(TEN, "Doe^Jo");
        assertThat(none.text()).isEqualTo("None noticed until 2026-01-05 10:00 by Doe^Jo.");
        assertThatThrownBy(() -> new Complications.NoneNoticed(TEN, " ")).isInstanceOf(Refusal.class);
        assertThat(Complications.of(ProcedureLog.EMPTY, Optional.empty()))
                .isInstanceOf(Complications.NotRecorded.class);
    }

    @Test
    void whatWasNoticedOutweighsAStatement() {
        ProcedureLog log = new Events()
                .add(0, new Happening.Complication("vascularPuncture", Optional.empty()))
                .log();
        assertThat(Complications.of(log, Optional.of(new Complications.NoneNoticed(TEN, "Doe^Jo"))))
                .isInstanceOf(Complications.Noticed.class);
    }

    @Test
    void sightDetailHoldsBackOnlyNotesOfTheView() {
        ProcedureLog log = new Events()
                .add(0, puncture())
                .add(5, sight(Seen.NOTHING))
                .add(10, aliquot("5"))
                .log();
        assertThat(SightDetail.FULL.recorded(log)).hasSize(3);
        assertThat(SightDetail.SUMMARY.recorded(log))
                .extracting(LoggedEvent::id)
                .containsExactly("e1", "e3");
        assertThat(SightDetail.NONE.recorded(log)).extracting(LoggedEvent::id).containsExactly("e1", "e3");
        assertThat(SightDetail.SUMMARY.recordsTipAtInjection()).isTrue();
        assertThat(SightDetail.NONE.recordsTipAtInjection()).isFalse();
    }

    @Test
    void theTipAtInjectionIsTheWorstOfAllInjections() {
        assertThat(TipAtInjection.of(ProcedureLog.EMPTY)).isEmpty();
        assertThat(TipAtInjection.of(new Events()
                        .add(0, puncture())
                        .add(5, sight(Seen.SHAFT_AND_TIP))
                        .add(10, aliquot("5"))
                        .log()))
                .contains(TipAtInjection.YES);
        assertThat(TipAtInjection.of(new Events()
                        .add(0, puncture())
                        .add(5, sight(Seen.SHAFT_NO_TIP))
                        .add(10, aliquot("5"))
                        .add(15, sight(Seen.SHAFT_AND_TIP))
                        .add(20, aliquot("5"))
                        .log()))
                .contains(TipAtInjection.NO);
        assertThat(TipAtInjection.of(
                        new Events().add(0, puncture()).add(10, aliquot("5")).log()))
                .contains(TipAtInjection.NOT_SURE);
    }

    @Test
    void aNewPunctureForgetsTheViewAndFindingTheTipDoesNotCount() {
        assertThat(TipAtInjection.of(new Events()
                        .add(0, sight(Seen.SHAFT_AND_TIP))
                        .add(5, puncture())
                        .add(10, aliquot("5"))
                        .log()))
                .contains(TipAtInjection.NOT_SURE);
        assertThat(TipAtInjection.of(new Events()
                        .add(0, puncture())
                        .add(5, sight(Seen.NOTHING))
                        .add(10, TO_FIND_THE_TIP)
                        .log()))
                .isEmpty();
    }
}
