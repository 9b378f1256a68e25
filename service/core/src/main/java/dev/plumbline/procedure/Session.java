// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.procedure;

import dev.plumbline.agents.AgentUse;
import dev.plumbline.agents.Dose;
import dev.plumbline.agents.DoseBudget;
import dev.plumbline.agents.OtherDoses;
import dev.plumbline.agents.Stage;
import dev.plumbline.agents.Volume;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The linked cases of one patient in one sitting. Two sides or two blocks are two cases; the dose budget is one.
 *
 * @param otherToday local anaesthetic given elsewhere today
 */
public record Session(String id, List<LinkedCase> cases, OtherDoses otherDoses, List<Dose> otherToday) {
    /**
     * Checks the links.
     *
     * @throws Refusal {@link Problem.InvalidValue} for a session without cases or with one twice
     */
    public Session {
        cases = List.copyOf(cases);
        otherToday = List.copyOf(otherToday);
        if (cases.isEmpty()) {
            throw refused("A session has at least one case.", "Link a case.");
        }
        Set<String> ids = new HashSet<>();
        for (LinkedCase linked : cases) {
            if (!ids.add(linked.caseId())) {
                throw refused("A case is linked twice.", "Link each case once.");
            }
        }
    }

    private static Refusal refused(String detail, String remedy) {
        return new Refusal(new Problem.InvalidValue("/cases", detail, remedy));
    }

    /**
     * A case with what counts in the budget.
     *
     * @param injected volume of each agent that the log shows as injected
     */
    public record LinkedCase(String caseId, List<AgentUse> uses, Map<String, Volume> injected) {
        public LinkedCase {
            uses = List.copyOf(uses);
            injected = Map.copyOf(injected);
        }

        /** Agents of which the log shows more, or another amount, than was entered as given. */
        public List<String> givenDiffersFromLog() {
            return uses.stream()
                    .filter(use -> use.volume(Stage.GIVEN).isPresent() && injected.containsKey(use.id()))
                    .filter(use -> !use.volume(Stage.GIVEN).orElseThrow().equals(injected.get(use.id())))
                    .map(AgentUse::id)
                    .toList();
        }

        /** What is in the patient: what was entered as given or what the log shows, whichever is more. */
        public Optional<Volume> given(AgentUse use) {
            Optional<Volume> entered = use.volume(Stage.GIVEN);
            Optional<Volume> logged = Optional.ofNullable(injected.get(use.id()));
            return entered.isPresent() && logged.isPresent()
                    ? Optional.of(entered.get().compareTo(logged.get()) >= 0 ? entered.get() : logged.get())
                    : entered.or(() -> logged);
        }
    }

    /**
     * Everything that counts at a stage: what is in the patient; at {@link Stage#DRAWN_UP} also what is drawn up where nothing
     * was given yet; at {@link Stage#PLANNED} also what is planned where nothing was drawn up.
     *
     * @param now for what has no time of its own
     */
    public DoseBudget budget(Stage stage, OffsetDateTime now) {
        List<Dose> doses = new ArrayList<>(otherToday);
        for (LinkedCase linked : cases) {
            for (AgentUse use : linked.uses()) {
                volume(linked, use, stage).ifPresent(volume -> doses.add(Dose.of(use, volume, now)));
            }
        }
        return new DoseBudget(doses, otherDoses);
    }

    private static Optional<Volume> volume(LinkedCase linked, AgentUse use, Stage stage) {
        Optional<Volume> given = linked.given(use);
        return switch (stage) {
            case GIVEN -> given;
            case DRAWN_UP -> larger(given, use.volume(Stage.DRAWN_UP), use);
            case PLANNED -> larger(given, use.volume(Stage.DRAWN_UP), use).or(() -> use.volume(Stage.PLANNED));
            case DISCARDED -> Optional.empty();
        };
    }

    /** While a syringe is not finished, what is in it can still be given. */
    private static Optional<Volume> larger(Optional<Volume> given, Optional<Volume> drawnUp, AgentUse use) {
        boolean finished = use.volume(Stage.GIVEN).isPresent();
        return finished || drawnUp.isEmpty()
                ? given
                : Optional.of(given.filter(volume -> volume.compareTo(drawnUp.get()) > 0)
                        .orElse(drawnUp.get()));
    }
}
