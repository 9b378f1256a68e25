// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.agents;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/**
 * One agent in one case and how far it came. A stage that nobody entered is absent, which is not the same as 0.
 *
 * @param id given by the client
 * @param purpose what it is for in this case
 * @param technique words of the site, for a limit that depends on it
 */
public record AgentUse(
        String id,
        Agent agent,
        Dose.Purpose purpose,
        Route route,
        Optional<String> technique,
        Map<Stage, Volume> volumes) {
    /**
     * Checks that no more is used than was drawn up.
     *
     * @throws Refusal {@link Problem.ContradictoryFields} when given and discarded exceed what was drawn up
     */
    public AgentUse {
        EnumMap<Stage, Volume> copy = new EnumMap<>(Stage.class);
        copy.putAll(volumes);
        volumes = Map.copyOf(copy);
        Volume used = copy.getOrDefault(Stage.GIVEN, Volume.NONE).plus(copy.getOrDefault(Stage.DISCARDED, Volume.NONE));
        Volume drawnUp = copy.get(Stage.DRAWN_UP);
        if (drawnUp != null && used.compareTo(drawnUp) > 0) {
            throw new Refusal(new Problem.ContradictoryFields(
                    "/volumeMl",
                    Amounts.plain(used.ml()) + " mL given and discarded are more than the "
                            + Amounts.plain(drawnUp.ml()) + " mL drawn up.",
                    "Change what was drawn up, given or discarded."));
        }
    }

    public Optional<Volume> volume(Stage stage) {
        return Optional.ofNullable(volumes.get(stage));
    }

    /** Mass of the drug at a stage; empty where the stage was not entered. */
    public Optional<Mass> mass(Stage stage) {
        return volume(stage).map(volume -> Mass.in(volume, agent.concentration()));
    }
}
