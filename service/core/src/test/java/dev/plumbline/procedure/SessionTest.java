// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.procedure;

import static dev.plumbline.procedure.Events.TEN;
import static dev.plumbline.procedure.Events.aliquot;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.plumbline.agents.Agent;
import dev.plumbline.agents.AgentUse;
import dev.plumbline.agents.Basis;
import dev.plumbline.agents.Concentration;
import dev.plumbline.agents.Dose;
import dev.plumbline.agents.Mass;
import dev.plumbline.agents.OtherDoses;
import dev.plumbline.agents.Route;
import dev.plumbline.agents.Stage;
import dev.plumbline.agents.Volume;
import dev.plumbline.problem.Refusal;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class SessionTest {
    private static final Agent HALF_PER_CENT =
            new Agent("bupivacaine", Basis.SALT, Concentration.percent("0.5"), List.of());

    private static AgentUse use(Map<Stage, Volume> volumes) {
        return new AgentUse("a-1", HALF_PER_CENT, Dose.Purpose.BLOCK, Route.PERINEURAL, Optional.empty(), volumes);
    }

    private static Session.LinkedCase linked(String id, ProcedureLog log, AgentUse... uses) {
        Map<String, Volume> injected = new HashMap<>();
        log.standing().stream()
                .filter(event -> event.what() instanceof Happening.Aliquot)
                .map(event -> (Happening.Aliquot) event.what())
                .forEach(a -> injected.merge(a.agentId().orElseThrow(), a.volume(), Volume::plus));
        return new Session.LinkedCase(id, List.of(uses), injected);
    }

    private static Session session(Session.LinkedCase... cases) {
        return new Session("s-1", List.of(cases), OtherDoses.ASKED_NONE, List.of());
    }

    private static void assertMass(Session session, Stage stage, String mg) {
        assertThat(session.budget(stage, TEN).totals().getOrDefault("bupivacaine/salt", Mass.NONE))
                .isEqualTo(Mass.ofMg(mg));
    }

    @Test
    void linkedCasesShareOneBudget() {
        Session both = session(
                linked("left", ProcedureLog.EMPTY, use(Map.of(Stage.GIVEN, Volume.ofMl("10")))),
                linked("right", ProcedureLog.EMPTY, use(Map.of(Stage.GIVEN, Volume.ofMl("12")))));
        assertMass(both, Stage.GIVEN, "110");
    }

    @Test
    void beforeInjectingWhatIsDrawnUpOrPlannedCounts() {
        AgentUse planned = use(Map.of(Stage.PLANNED, Volume.ofMl("20")));
        AgentUse drawnUp = use(Map.of(Stage.PLANNED, Volume.ofMl("20"), Stage.DRAWN_UP, Volume.ofMl("15")));
        Session session =
                session(linked("left", ProcedureLog.EMPTY, planned), linked("right", ProcedureLog.EMPTY, drawnUp));
        assertMass(session, Stage.GIVEN, "0");
        assertMass(session, Stage.DRAWN_UP, "75");
        assertMass(session, Stage.PLANNED, "175");
        assertMass(session, Stage.DISCARDED, "0");
    }

    @Test
    void aHalfEmptySyringeCountsWhole() {
        ProcedureLog fiveInjected = new Events().add(0, aliquot("5")).log();
        Session session = session(linked("left", fiveInjected, use(Map.of(Stage.DRAWN_UP, Volume.ofMl("20")))));
        assertMass(session, Stage.GIVEN, "25");
        assertMass(session, Stage.DRAWN_UP, "100");
    }

    @Test
    void aFinishedSyringeCountsWhatWasGiven() {
        AgentUse finished = use(Map.of(
                Stage.DRAWN_UP, Volume.ofMl("20"),
                Stage.GIVEN, Volume.ofMl("15"),
                Stage.DISCARDED, Volume.ofMl("5")));
        Session session = session(linked("left", ProcedureLog.EMPTY, finished));
        assertMass(session, Stage.DRAWN_UP, "75");
        assertMass(session, Stage.PLANNED, "75");
    }

    @Test
    void whereLogAndEntryDifferTheLargerCountsAndItIsSaid() {
        ProcedureLog twelve =
                new Events().add(0, aliquot("6")).add(10, aliquot("6")).log();
        Session.LinkedCase linked = linked("left", twelve, use(Map.of(Stage.GIVEN, Volume.ofMl("10"))));
        assertThat(linked.givenDiffersFromLog()).containsExactly("a-1");
        assertMass(session(linked), Stage.GIVEN, "60");
        assertThat(linked("left", twelve, use(Map.of(Stage.GIVEN, Volume.ofMl("12"))))
                        .givenDiffersFromLog())
                .isEmpty();
    }

    @Test
    void otherDosesOfTheDayCount() {
        Dose other = new Dose(
                "bupivacaine",
                Basis.SALT,
                Mass.ofMg("30"),
                false,
                Route.INFILTRATION,
                Optional.empty(),
                Dose.Purpose.OTHER_TODAY,
                TEN.minusHours(2));
        Session session = new Session(
                "s-1",
                List.of(linked("left", ProcedureLog.EMPTY, use(Map.of(Stage.GIVEN, Volume.ofMl("10"))))),
                OtherDoses.ASKED_GIVEN,
                List.of(other));
        assertMass(session, Stage.GIVEN, "80");
    }

    @Test
    void aCaseIsLinkedOnce() {
        Session.LinkedCase one = linked("left", ProcedureLog.EMPTY);
        assertThatThrownBy(() -> session(one, one)).isInstanceOf(Refusal.class);
        assertThatThrownBy(SessionTest::session).isInstanceOf(Refusal.class);
    }
}
