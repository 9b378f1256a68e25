// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.record;

import dev.plumbline.agents.AgentEntry;
import dev.plumbline.agents.Basis;
import dev.plumbline.agents.Dose;
import dev.plumbline.agents.Labelled;
import dev.plumbline.agents.Route;
import dev.plumbline.agents.Stage;
import dev.plumbline.agents.Volume;
import dev.plumbline.geometry.InputUncertainty;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Probe;
import dev.plumbline.needle.Needle;
import dev.plumbline.plan.Approach;
import dev.plumbline.plan.Constraints;
import dev.plumbline.plan.PlanMarks;
import dev.plumbline.procedure.CheckEntry;
import dev.plumbline.procedure.LoggedEvent;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Invented cases for tests of what surrounds the needle. */
final class Cases {
    Context context = Context.NOTHING_STATED;
    Needle needle = Needle.NOTHING_STATED;
    Surroundings around = Surroundings.NOTHING_STATED;
    List<CheckEntry> checks = List.of();
    List<LoggedEvent> events = List.of();
    List<AgentEntry> agents = List.of();

    CaseDocument document() {
        return new CaseDocument(
                Optional.of("case-1"),
                Optional.of(Approach.IN_PLANE),
                new FrameRef.Stated(640, 480, 0.1, 0.1),
                Probe.NOTHING_STATED,
                new PlanMarks(new PointPx(320, 300), Optional.empty(), List.of(), List.of(), List.of()),
                needle,
                Optional.empty(),
                Constraints.NOTHING_STATED,
                InputUncertainty.NOTHING_STATED,
                List.of(),
                context,
                new Bedside(
                        Optional.of("session-1"),
                        List.of(),
                        checks,
                        events,
                        agents,
                        around,
                        Optional.empty(),
                        Optional.empty(),
                        List.of()),
                Optional.empty());
    }

    /** Half per cent bupivacaine. */
    static AgentEntry agent(String id, Map<Stage, Volume> volumes) {
        return agent(id, "bupivacaine", "0.5", volumes, Optional.empty(), Optional.empty());
    }

    static AgentEntry agent(
            String id,
            String drug,
            String percent,
            Map<Stage, Volume> volumes,
            Optional<String> corrects,
            Optional<String> mixture) {
        return new AgentEntry(
                id,
                corrects,
                new AgentEntry.Solution(
                        drug, Basis.SALT, new Labelled(new BigDecimal(percent), Labelled.Form.PERCENT), List.of()),
                new AgentEntry.Handling(Dose.Purpose.BLOCK, Route.PERINEURAL, Optional.empty(), mixture),
                volumes,
                new AgentEntry.Packaging(Optional.empty(), Optional.empty()),
                Optional.empty());
    }
}
