// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.procedure;

import static dev.plumbline.procedure.Events.TEN;
import static dev.plumbline.procedure.Events.aliquot;
import static dev.plumbline.procedure.Events.puncture;
import static dev.plumbline.procedure.Events.sight;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.plumbline.agents.Volume;
import dev.plumbline.problem.Refusal;
import dev.plumbline.sight.Seen;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class RecordContentsTest {
    private static final Happening.Aliquot TO_FIND_THE_TIP = new Happening.Aliquot(
            Volume.ofMl("1"),
            Optional.of("saline"),
            Optional.empty(),
            true,
            Optional.of(Spread.TARGET),
            Optional.of(new Resistance.Felt(Resistance.Word.EASY)),
            Optional.of(Pain.NONE));

    @Test
    void noneIsSaidOnlyWithATimeAndAName() {
        Complications.NoneNoticed none = new Complications.NoneNoticed(TEN, "Doe^Jo");
        assertThat(none.text()).isEqualTo("None noticed until 2026-01-05 10:00 by Doe^Jo.");
        assertThatThrownBy(() -> new Complications.NoneNoticed(TEN, " ")).isInstanceOf(Refusal.class);
        assertThat(Complications.of(ProcedureLog.EMPTY)).isInstanceOf(Complications.NotRecorded.class);
        assertThat(Complications.of(new Events()
                        .add(0, new Happening.LookedForComplications("Roe^Al"))
                        .add(60, new Happening.LookedForComplications("Doe^Jo"))
                        .log()))
                .isEqualTo(new Complications.NoneNoticed(TEN.plusSeconds(60), "Doe^Jo"));
    }

    @Test
    void whatWasNoticedOutweighsAStatement() {
        ProcedureLog log = new Events()
                .add(0, new Happening.Complication("vascularPuncture", Optional.empty()))
                .add(60, new Happening.LookedForComplications("Doe^Jo"))
                .log();
        assertThat(Complications.of(log)).isInstanceOf(Complications.Noticed.class);
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
    void keptHoldsBackNotesOfTheViewAndNothingElse() {
        ProcedureLog log = new Events()
                .add(0, puncture())
                .add(5, sight(Seen.NOTHING))
                .add(10, aliquot("5"))
                .add(20, Events.correction("e3", aliquot("6")))
                .log();
        assertThat(ids(SightDetail.FULL, log)).containsExactly("e1", "e2", "e3", "e4");
        assertThat(ids(SightDetail.SUMMARY, log)).containsExactly("e1", "e3", "e4");
        assertThat(ids(SightDetail.NONE, log)).containsExactly("e1", "e3", "e4");
    }

    /** A correction that speaks of the view would tell it, or would correct nothing; so what stands is told without it. */
    @Test
    void keptTellsWhatStandsWhereACorrectionSpeaksOfTheView() {
        ProcedureLog withdrawn = new Events()
                .add(0, puncture())
                .add(5, sight(Seen.NOTHING))
                .add(10, Events.withdrawal("e2"))
                .add(15, aliquot("5"))
                .log();
        assertThat(ids(SightDetail.FULL, withdrawn)).containsExactly("e1", "e2", "e3", "e4");
        assertThat(ids(SightDetail.NONE, withdrawn)).containsExactly("e1", "e4");
        ProcedureLog becameOne = new Events()
                .add(0, puncture())
                .add(5, new Happening.Aspiration(false))
                .add(10, Events.correction("e2", sight(Seen.NOTHING)))
                .log();
        assertThat(SightDetail.SUMMARY.kept(becameOne))
                .noneMatch(event ->
                        event.what() instanceof Happening.Sight || event.what() instanceof Happening.Correction)
                .extracting(LoggedEvent::id)
                .containsExactly("e1");
        ProcedureLog ceasedToBeOne = new Events()
                .add(0, puncture())
                .add(5, sight(Seen.NOTHING))
                .add(10, Events.correction("e2", new Happening.Aspiration(false)))
                .log();
        assertThat(SightDetail.NONE.kept(ceasedToBeOne))
                .extracting(LoggedEvent::what)
                .containsExactly(puncture(), new Happening.Aspiration(false));
    }

    private static List<String> ids(SightDetail detail, ProcedureLog log) {
        return detail.kept(log).stream().map(LoggedEvent::id).toList();
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
