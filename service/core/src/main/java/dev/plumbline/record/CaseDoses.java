// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.record;

import dev.plumbline.agents.AgentEntry;
import dev.plumbline.agents.AgentUse;
import dev.plumbline.agents.Stage;
import dev.plumbline.agents.Volume;
import dev.plumbline.procedure.Happening;
import dev.plumbline.procedure.LoggedEvent;
import dev.plumbline.procedure.Session.LinkedCase;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;

/** What a case adds to the dose budget of its session. */
public final class CaseDoses {
    private final List<AgentEntry> entries;

    private CaseDoses(Bedside bedside) {
        this.entries = bedside.agents();
    }

    /** The agents as they stand now, by the id of their first entry, with what the log shows as injected. */
    public static LinkedCase linked(String caseId, Bedside bedside) {
        CaseDoses doses = new CaseDoses(bedside);
        List<AgentUse> uses = doses.current().stream()
                .map(entry -> entry.use(doses.root(entry.id())))
                .toList();
        return new LinkedCase(caseId, uses, doses.injected(bedside));
    }

    /** Entries in whose place no other stands. */
    public static List<AgentEntry> current(Bedside bedside) {
        return new CaseDoses(bedside).current();
    }

    private List<AgentEntry> current() {
        Set<String> replaced = new HashSet<>();
        entries.forEach(entry -> entry.corrects().ifPresent(replaced::add));
        return entries.stream().filter(entry -> !replaced.contains(entry.id())).toList();
    }

    /** Id of the first entry of the agent that an entry speaks of; what corrects no earlier entry is a first entry itself. */
    private String root(String id) {
        Map<String, String> roots = new HashMap<>();
        for (AgentEntry entry : entries) {
            String first = entry.corrects().map(roots::get).orElse(entry.id());
            roots.putIfAbsent(entry.id(), first);
        }
        return roots.getOrDefault(id, id);
    }

    private Map<String, Volume> injected(Bedside bedside) {
        Map<String, Volume> injected = new HashMap<>();
        for (LoggedEvent event : bedside.log().standing()) {
            if (event.what() instanceof Happening.Aliquot aliquot) {
                aliquot.agentId()
                        .ifPresent(agent -> shares(agent, aliquot.volume())
                                .forEach((id, volume) -> injected.merge(id, volume, Volume::plus)));
            }
        }
        return injected;
    }

    /** A volume of a mixture is a volume of each of its agents, in the proportion in which they were put together. */
    private Map<String, Volume> shares(String agent, Volume volume) {
        List<AgentEntry> mixed = current().stream()
                .filter(entry ->
                        entry.handling().mixture().filter(agent::equals).isPresent())
                .toList();
        if (mixed.isEmpty()) {
            return Map.of(root(agent), volume);
        }
        BigDecimal whole =
                mixed.stream().map(CaseDoses::portion).map(Volume::ml).reduce(BigDecimal.ZERO, BigDecimal::add);
        Map<String, Volume> shares = new HashMap<>();
        for (AgentEntry entry : mixed) {
            BigDecimal part = volume.ml().multiply(portion(entry).ml()).divide(whole, MathContext.DECIMAL128);
            shares.put(root(entry.id()), new Volume(part));
        }
        return shares;
    }

    /** What of an agent is in its syringe; {@link CaseCheck} lets none into a mixture without it. */
    public static Volume portion(AgentEntry entry) {
        Volume drawnUp = entry.volumes().get(Stage.DRAWN_UP);
        return drawnUp == null ? Objects.requireNonNullElse(entry.volumes().get(Stage.PLANNED), Volume.NONE) : drawnUp;
    }
}
