// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.agents;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * An agent as it was entered. Nothing of it is changed later: how far it came is said by a new entry that names this one.
 *
 * @param id given by the client, so that resending is harmless
 * @param corrects id of the entry in whose place this one stands
 * @param handling what it is for and where it goes
 * @param volumes by stage; a stage that nobody entered is absent
 * @param packaging what stands on the box
 * @param exceeding who goes on beyond the site's limit, and why
 */
public record AgentEntry(
        String id,
        Optional<String> corrects,
        Solution solution,
        Handling handling,
        Map<Stage, Volume> volumes,
        Packaging packaging,
        Optional<Exceeding> exceeding) {
    /**
     * Checks that no more is used than was drawn up.
     *
     * @throws dev.plumbline.problem.Refusal when given and discarded exceed what was drawn up
     */
    public AgentEntry {
        EnumMap<Stage, Volume> copy = new EnumMap<>(Stage.class);
        copy.putAll(volumes);
        volumes = Map.copyOf(copy);
        use(id, solution, handling, volumes);
    }

    /** A solution as its label has it. */
    public record Solution(String drug, Basis basis, Labelled concentration, List<Additive> additives) {
        public Solution {
            additives = List.copyOf(additives);
        }

        public Agent agent() {
            return new Agent(
                    drug,
                    basis,
                    concentration.concentration(),
                    additives.stream()
                            .map(a -> new Agent.Additive(
                                    a.drug(), a.basis(), a.concentration().concentration()))
                            .toList());
        }
    }

    /** A second drug in the same solution, at its concentration in it. */
    public record Additive(String drug, Basis basis, Labelled concentration) {}

    /**
     * What it is for and where it goes.
     *
     * @param technique words of the site, for a limit that depends on it
     * @param mixture name of the syringe that it shares with other agents
     */
    public record Handling(Dose.Purpose purpose, Route route, Optional<String> technique, Optional<String> mixture) {}

    /** What stands on the box. */
    public record Packaging(Optional<String> brand, Optional<String> lot) {}

    /**
     * What counts of it.
     *
     * @param root id of the first entry of this agent, by which the log knows it
     */
    public AgentUse use(String root) {
        return use(root, solution, handling, volumes);
    }

    private static AgentUse use(String id, Solution solution, Handling handling, Map<Stage, Volume> volumes) {
        return new AgentUse(id, solution.agent(), handling.purpose(), handling.route(), handling.technique(), volumes);
    }
}
