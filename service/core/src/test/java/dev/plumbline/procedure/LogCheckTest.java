// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.procedure;

import static dev.plumbline.procedure.Events.aliquot;
import static dev.plumbline.procedure.Events.out;
import static dev.plumbline.procedure.Events.puncture;
import static dev.plumbline.procedure.Events.sight;
import static dev.plumbline.procedure.Events.stop;
import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.agents.Volume;
import dev.plumbline.sight.Seen;
import dev.plumbline.sight.StopSign;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class LogCheckTest {
    private static final LogCheck.Beside CASE = new LogCheck.Beside(
            Optional.of("axillaryBrachialPlexus"),
            Optional.of(Laterality.RIGHT),
            Duration.ofMinutes(5),
            Map.of("a-1", Volume.ofMl("20")));

    private static Events begun() {
        return new Events().add(0, stop(Laterality.RIGHT)).add(30, puncture());
    }

    private static void assertFlags(Events events, Contradiction... expected) {
        assertThat(LogCheck.flags(events.log(), CASE))
                .extracting(LogCheck.Flag::what)
                .containsExactly(expected);
    }

    @Test
    void anOrdinaryLogContradictsNothing() {
        assertFlags(begun().add(40, sight(Seen.SHAFT_AND_TIP))
                .add(50, new Happening.Aspiration(false))
                .add(60, aliquot("10"))
                .add(70, aliquot("10"))
                .add(80, out()));
    }

    @Test
    void aPunctureNeedsItsStopMoment() {
        assertFlags(new Events().add(0, puncture()), Contradiction.PUNCTURE_WITHOUT_STOP_MOMENT);
        assertFlags(
                begun().add(60, out()).add(70, new Happening.Puncture(2)), Contradiction.PUNCTURE_WITHOUT_STOP_MOMENT);
    }

    @Test
    void anOldStopMomentIsFlagged() {
        assertFlags(new Events().add(0, stop(Laterality.RIGHT)).add(300, puncture()));
        assertFlags(
                new Events().add(0, stop(Laterality.RIGHT)).add(301, puncture()), Contradiction.STOP_MOMENT_TOO_OLD);
    }

    @ParameterizedTest
    @EnumSource(Happening.ContextChanged.What.class)
    void aChangeAfterTheStopMomentIsFlaggedUntilANewOne(Happening.ContextChanged.What what) {
        assertFlags(
                new Events()
                        .add(0, stop(Laterality.RIGHT))
                        .add(10, new Happening.ContextChanged(what))
                        .add(20, puncture()),
                Contradiction.CHANGED_SINCE_STOP_MOMENT);
        assertFlags(new Events()
                .add(0, stop(Laterality.RIGHT))
                .add(10, new Happening.ContextChanged(what))
                .add(15, stop(Laterality.RIGHT))
                .add(20, puncture()));
    }

    @Test
    void aStopMomentForAnotherSideOrBlockIsFlagged() {
        assertFlags(
                new Events().add(0, stop(Laterality.LEFT)).add(30, puncture()),
                Contradiction.STOP_MOMENT_FOR_OTHER_SIDE);
        LogCheck.Beside otherBlock =
                new LogCheck.Beside(Optional.of("femoralNerve"), Optional.empty(), Duration.ofMinutes(5), Map.of());
        assertThat(LogCheck.flags(begun().log(), otherBlock))
                .containsExactly(new LogCheck.Flag(Contradiction.STOP_MOMENT_FOR_OTHER_BLOCK, "e2"));
    }

    @Test
    void injectingOutsideTheTimeTheNeedleIsInIsFlagged() {
        assertFlags(
                new Events()
                        .add(0, aliquot("1"))
                        .add(10, stop(Laterality.RIGHT))
                        .add(20, puncture()),
                Contradiction.INJECTED_BEFORE_PUNCTURE);
        assertFlags(begun().add(40, out()).add(50, aliquot("1")), Contradiction.INJECTED_AFTER_NEEDLE_OUT);
    }

    @Test
    void anEventEnteredLaterIsJudgedWhereItHappened() {
        assertFlags(begun().add(60, out()).addLater(50, aliquot("1")));
    }

    @Test
    void injectingAfterAStopIsFlaggedUntilSomethingWasChanged() {
        assertFlags(
                begun().add(40, new Happening.Halt(Optional.of(StopSign.FIRM_RESISTANCE), Optional.empty()))
                        .add(50, aliquot("1")),
                Contradiction.INJECTED_AFTER_STOP);
        assertFlags(begun().add(40, new Happening.Halt(Optional.of(StopSign.FIRM_RESISTANCE), Optional.empty()))
                .add(45, new Happening.Redirection())
                .add(50, aliquot("1")));
        assertFlags(begun().add(40, new Happening.Halt(Optional.of(StopSign.TIP_LOST), Optional.empty()))
                .add(45, sight(Seen.SHAFT_AND_TIP))
                .add(50, aliquot("1")));
    }

    @Test
    void afterBloodOrToxicityNothingMakesInjectingUnremarkable() {
        assertFlags(
                begun().add(40, new Happening.Halt(Optional.of(StopSign.TOXICITY), Optional.empty()))
                        .add(42, new Happening.Halt(Optional.of(StopSign.TIP_LOST), Optional.empty()))
                        .add(45, sight(Seen.SHAFT_AND_TIP))
                        .add(50, aliquot("1")),
                Contradiction.INJECTED_AFTER_STOP);
    }

    @Test
    void injectingAfterBloodWasAspiratedIsFlagged() {
        assertFlags(
                begun().add(40, new Happening.Aspiration(true)).add(50, aliquot("1")),
                Contradiction.INJECTED_AFTER_BLOOD);
        assertFlags(begun().add(40, new Happening.Aspiration(true))
                .add(45, new Happening.Aspiration(false))
                .add(50, aliquot("1")));
    }

    @Test
    void moreThanWasDrawnUpIsFlaggedWhereItShows() {
        assertThat(LogCheck.flags(
                        begun().add(40, aliquot("15"))
                                .add(50, aliquot("5"))
                                .add(60, aliquot("0.1"))
                                .log(),
                        CASE))
                .containsExactly(new LogCheck.Flag(Contradiction.MORE_THAN_DRAWN_UP, "e5"));
    }

    @Test
    void aNeedleGoesInAndOutOnceEach() {
        assertFlags(begun().add(40, puncture()), Contradiction.PUNCTURE_WHILE_NEEDLE_IN);
        assertFlags(begun().add(40, out()).add(50, out()), Contradiction.NEEDLE_OUT_WITHOUT_PUNCTURE);
    }

    @Test
    void aCorrectedEventIsNotJudged() {
        assertFlags(begun().add(40, aliquot("25")).add(40, Events.correction("e3", aliquot("2.5"))));
    }
}
