// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.procedure;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.sight.Seen;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

class ProcedureLogPropertyTest {
    @Provide
    Arbitrary<List<LoggedEvent>> events() {
        Arbitrary<Happening> happenings = Arbitraries.of(
                Events.puncture(),
                Events.out(),
                Events.aliquot("2"),
                Events.sight(Seen.NOTHING),
                Events.sight(Seen.SHAFT_AND_TIP),
                new Happening.Pass(),
                new Happening.Redirection(),
                new Happening.Aspiration(false));
        return Combinators.combine(happenings, Arbitraries.integers().between(0, 600), Arbitraries.of(true, false))
                .as((what, seconds, live) -> live ? Events.event("x", seconds, what) : Events.later("x", seconds, what))
                .list()
                .ofMinSize(1)
                .ofMaxSize(25)
                .map(ProcedureLogPropertyTest::numbered);
    }

    private static List<LoggedEvent> numbered(List<LoggedEvent> events) {
        List<LoggedEvent> numbered = new ArrayList<>();
        for (LoggedEvent e : events) {
            numbered.add(new LoggedEvent(
                    "e" + numbered.size(), e.what(), e.happenedAt(), e.enteredAt(), e.enteredBy(), e.enteredLater()));
        }
        return numbered;
    }

    /** A tablet that resends anything, any number of times, changes nothing. */
    @Property(tries = 200)
    void resendingIsHarmless(@ForAll("events") List<LoggedEvent> events, @ForAll Random random) {
        ProcedureLog once = ProcedureLog.stored(events);
        ProcedureLog again = once;
        for (int i = 0; i < 20; i++) {
            again = again.append(events.get(random.nextInt(events.size())), Events.TEN.plusHours(2));
        }
        assertThat(again.events()).isEqualTo(once.events());
    }

    /** Correcting an event and taking the correction back leaves what follows from the log as it was. */
    @Property(tries = 200)
    void aCorrectionTakenBackLeavesNoTrace(@ForAll("events") List<LoggedEvent> events, @ForAll Random random) {
        ProcedureLog before = ProcedureLog.stored(events);
        LoggedEvent victim = events.get(random.nextInt(events.size()));
        LoggedEvent correction = entry("c", victim, Events.correction(victim.id(), Events.aliquot("7")));
        LoggedEvent takenBack = entry("t", victim, Events.withdrawal("c"));
        List<LoggedEvent> all = new ArrayList<>(events);
        all.add(correction);
        all.add(takenBack);
        ProcedureLog after = ProcedureLog.stored(all);
        assertThat(after.events()).hasSize(events.size() + 2);
        assertThat(after.standing()).isEqualTo(before.standing());
        assertThat(Derived.of(after)).isEqualTo(Derived.of(before));
    }

    private static LoggedEvent entry(String id, LoggedEvent like, Happening what) {
        return new LoggedEvent(id, what, like.happenedAt(), like.enteredAt(), like.enteredBy(), like.enteredLater());
    }

    /** A time is given only when every puncture and every needle out was logged live. */
    @Property(tries = 500)
    void noTimeWithoutBothEndsLive(@ForAll("events") List<LoggedEvent> events) {
        boolean anyLater = events.stream()
                .filter(e -> e.what() instanceof Happening.Puncture || e.what() instanceof Happening.NeedleOut)
                .anyMatch(LoggedEvent::enteredLater);
        Elapsed elapsed = Derived.of(ProcedureLog.stored(events)).underSkin();
        if (anyLater) {
            assertThat(elapsed).isInstanceOf(Elapsed.Unknown.class);
        }
        Optional.of(elapsed)
                .filter(Elapsed.Known.class::isInstance)
                .ifPresent(known ->
                        assertThat(((Elapsed.Known) known).duration()).isGreaterThanOrEqualTo(java.time.Duration.ZERO));
    }
}
