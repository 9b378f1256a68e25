// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.procedure;

import static dev.plumbline.procedure.Events.TEN;
import static dev.plumbline.procedure.Events.aliquot;
import static dev.plumbline.procedure.Events.correction;
import static dev.plumbline.procedure.Events.event;
import static dev.plumbline.procedure.Events.out;
import static dev.plumbline.procedure.Events.puncture;
import static dev.plumbline.procedure.Events.withdrawal;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.math.BigDecimal;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class ProcedureLogTest {
    @Test
    void resendingTheSameEventChangesNothing() {
        LoggedEvent event = event("e1", 0, puncture());
        ProcedureLog once = ProcedureLog.EMPTY.append(event, TEN);
        assertThat(once.append(event, TEN.plusMinutes(30))).isSameAs(once);
    }

    @Test
    void theSameIdWithOtherContentIsRefused() {
        ProcedureLog log = ProcedureLog.EMPTY.append(event("e1", 0, puncture()), TEN);
        assertThatThrownBy(() -> log.append(event("e1", 0, out()), TEN))
                .isInstanceOfSatisfying(
                        Refusal.class, refusal -> assertThat(refusal.problem()).isInstanceOf(Problem.Conflict.class));
    }

    @Test
    void anEventOfTheFutureIsRefusedBeyondTheDifferenceOfClocks() {
        LoggedEvent ahead = event("e1", 300, puncture());
        assertThat(ProcedureLog.EMPTY.append(ahead, TEN).events()).containsExactly(ahead);
        assertThatThrownBy(() -> ProcedureLog.EMPTY.append(event("e1", 301, puncture()), TEN))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("future");
    }

    @Test
    void anEventAfterItsOwnEntryIsRefused() {
        assertThatThrownBy(() -> new LoggedEvent("e1", puncture(), TEN.plusSeconds(1), TEN, "Roe^Al", false))
                .isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> new LoggedEvent(" ", puncture(), TEN, TEN, "Roe^Al", false))
                .isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> new LoggedEvent("e1", puncture(), TEN, TEN, "", false))
                .isInstanceOf(Refusal.class);
    }

    @Test
    void aCorrectionIsANewEventAndTheOldOneStays() {
        ProcedureLog log = new Events()
                .add(0, puncture())
                .add(60, aliquot("5"))
                .add(60, correction("e2", aliquot("3")))
                .log();
        assertThat(log.events()).hasSize(3);
        assertThat(log.standing()).extracting(LoggedEvent::id).containsExactly("e1", "e3");
        assertThat(Derived.of(log).injected().ml()).isEqualByComparingTo("3");
    }

    @Test
    void aCorrectedCorrectionReplacesBoth() {
        ProcedureLog log = new Events()
                .add(60, aliquot("5"))
                .add(60, correction("e1", aliquot("3")))
                .add(60, correction("e2", aliquot("4")))
                .log();
        assertThat(log.standing()).extracting(LoggedEvent::id).containsExactly("e3");
    }

    @Test
    void aCorrectionTakenBackGivesBackWhatItReplaced() {
        ProcedureLog log = new Events()
                .add(60, aliquot("5"))
                .add(60, correction("e1", aliquot("3")))
                .add(60, withdrawal("e2"))
                .log();
        assertThat(log.standing()).extracting(LoggedEvent::id).containsExactly("e1");
    }

    @Test
    void anEventIsCorrectedOnlyOnce() {
        Events events = new Events().add(60, aliquot("5")).add(60, correction("e1", aliquot("3")));
        assertThatThrownBy(() -> events.add(60, correction("e1", aliquot("4"))).log())
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("correction of that correction");
    }

    @Test
    void aCorrectionNamesAnEvent() {
        assertThatThrownBy(() -> new Events().add(0, withdrawal("e7")).log()).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> new Happening.Correction("e1", Optional.of(withdrawal("e0")), Optional.of("why")))
                .isInstanceOf(Refusal.class);
    }

    @Test
    void whatWasEnteredLaterStandsWhereItHappened() {
        ProcedureLog log = new Events()
                .add(0, puncture())
                .add(120, out())
                .addLater(60, aliquot("5"))
                .log();
        assertThat(log.standing()).extracting(LoggedEvent::id).containsExactly("e1", "e3", "e2");
        assertThat(log.events()).extracting(LoggedEvent::id).containsExactly("e1", "e2", "e3");
    }

    @Test
    void aStoredLogIsReadBackAsItWas() {
        ProcedureLog log = new Events().add(0, puncture()).add(60, out()).log();
        assertThat(ProcedureLog.stored(log.events()).events()).isEqualTo(log.events());
    }

    @Test
    void clocksThatDifferAreShown() {
        assertThat(ProcedureLog.clockDifference(event("e1", 90, puncture()), TEN))
                .isEqualTo(Duration.ofSeconds(90));
    }

    @Test
    void aStopMomentNeedsTwoPeople() {
        for (List<String> names : List.of(
                List.of("Doe^Jo"),
                List.of("Doe^Jo", "doe^jo "),
                List.of("Doe^Jo", " "),
                List.of("A^A", "B^B", "C^C"))) {
            assertThatThrownBy(() -> new StopMoment(names, "axillaryBrachialPlexus", Laterality.LEFT, true, true))
                    .isInstanceOf(Refusal.class);
        }
        assertThatThrownBy(() -> new StopMoment(List.of("Doe^Jo", "Roe^Al"), "", Laterality.LEFT, true, true))
                .isInstanceOf(Refusal.class);
    }

    @Test
    void whatWasInjectedHasAVolumeAndAName() {
        assertThatThrownBy(() -> aliquot("0")).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> new Resistance.Measured(BigDecimal.ONE, "kPa", " "))
                .isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> new Happening.PlanChanged(" ")).isInstanceOf(Refusal.class);
    }
}
