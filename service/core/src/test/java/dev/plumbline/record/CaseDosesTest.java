// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import dev.plumbline.agents.AgentEntry;
import dev.plumbline.agents.AgentUse;
import dev.plumbline.agents.Stage;
import dev.plumbline.agents.Volume;
import dev.plumbline.procedure.Events;
import dev.plumbline.procedure.Happening;
import dev.plumbline.procedure.Session.LinkedCase;
import java.math.BigDecimal;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class CaseDosesTest {
    private final Cases cases = new Cases();

    private LinkedCase linked() {
        return CaseDoses.linked("case-1", cases.document().bedside());
    }

    private static Happening inject(String agent, String ml) {
        return new Happening.Aliquot(
                Volume.ofMl(ml),
                Optional.empty(),
                Optional.of(agent),
                false,
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    @Test
    void theLastEntryOfAnAgentCountsUnderItsFirstName() {
        cases.agents = List.of(
                Cases.agent("a-1", Map.of(Stage.PLANNED, Volume.ofMl("20"))),
                Cases.agent(
                        "a-2",
                        "bupivacaine",
                        "0.5",
                        Map.of(Stage.DRAWN_UP, Volume.ofMl("15")),
                        Optional.of("a-1"),
                        Optional.empty()));
        cases.events = new Events()
                .add(0, inject("a-1", "4"))
                .add(9, inject("a-2", "3"))
                .log()
                .events();
        assertThat(linked().uses()).extracting(AgentUse::id).containsExactly("a-1");
        assertThat(linked().uses().get(0).volumes()).isEqualTo(Map.of(Stage.DRAWN_UP, Volume.ofMl("15")));
        assertThat(linked().injected()).isEqualTo(Map.of("a-1", Volume.ofMl("7")));
    }

    private static AgentEntry correcting(String id, String corrected) {
        return Cases.agent(
                id,
                "bupivacaine",
                "0.5",
                Map.of(Stage.DRAWN_UP, Volume.ofMl("15")),
                Optional.of(corrected),
                Optional.empty());
    }

    /** No door lets these in; what is held already must not keep anybody waiting. */
    @Test
    void agentsThatCorrectThemselvesOrInACircleAreFollowedToAnEnd() {
        cases.agents = List.of(correcting("a-1", "a-1"), correcting("a-2", "a-3"), correcting("a-3", "a-2"));
        cases.events = new Events()
                .add(0, inject("a-1", "4"))
                .add(9, inject("a-2", "3"))
                .log()
                .events();
        assertTimeoutPreemptively(Duration.ofSeconds(10), () -> {
            assertThat(linked().uses()).isEmpty();
            assertThat(linked().injected().values().stream().map(Volume::ml).reduce(BigDecimal.ZERO, BigDecimal::add))
                    .isEqualByComparingTo("7");
        });
    }

    @Test
    void aVolumeOfAMixtureIsSharedAsItWasPutTogether() {
        cases.agents = List.of(
                Cases.agent(
                        "a-1",
                        "bupivacaine",
                        "0.5",
                        Map.of(Stage.DRAWN_UP, Volume.ofMl("10")),
                        Optional.empty(),
                        Optional.of("mix")),
                Cases.agent(
                        "a-2",
                        "lidocaine",
                        "2",
                        Map.of(Stage.DRAWN_UP, Volume.ofMl("30")),
                        Optional.empty(),
                        Optional.of("mix")));
        cases.events = new Events().add(0, inject("mix", "20")).log().events();
        assertThat(linked().injected()).isEqualTo(Map.of("a-1", Volume.ofMl("5"), "a-2", Volume.ofMl("15")));
    }

    @Test
    void anInjectionTakenBackDoesNotCount() {
        cases.agents = List.of(Cases.agent("a-1", Map.of()));
        cases.events = new Events()
                .add(0, inject("a-1", "4"))
                .add(9, Events.withdrawal("e1"))
                .log()
                .events();
        assertThat(linked().injected()).isEmpty();
    }
}
