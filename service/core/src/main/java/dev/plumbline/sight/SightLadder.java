// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.sight;

import dev.plumbline.plan.Approach;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * The ordered steps of one approach. A ladder that exists has an answer to everything that can be seen: the first step for
 * anything unseen holds the needle still, and the last one ends the pass.
 *
 * @param carryOn what to do while the tip is known
 */
public record SightLadder(Approach approach, List<SightStep> steps, SightStep.Says carryOn) {
    public SightLadder {
        steps = List.copyOf(steps);
        Set<String> ids = new HashSet<>();
        for (SightStep step : steps) {
            if (!ids.add(step.id())) {
                throw new IllegalArgumentException("Two steps are called " + step.id() + ".");
            }
            for (Seen seen : step.when()) {
                if (!seen.in(approach)) {
                    throw new IllegalArgumentException("Step " + step.id() + " is for " + seen.word()
                            + ", which is not seen " + approach.word() + ".");
                }
            }
        }
        for (Seen seen : Seen.all(approach)) {
            if (!seen.tipKnown()) {
                checkReaches(seen, stepsFor(steps, seen));
            }
        }
    }

    private static void checkReaches(Seen seen, List<SightStep> path) {
        if (path.isEmpty()) {
            throw new IllegalArgumentException("No step is meant for " + seen.word() + ".");
        }
        SightStep first = path.get(0);
        if (first.hands().needle() != NeedleUse.STILL || first.hands().moves() != Part.NOTHING) {
            throw new IllegalArgumentException(
                    "The first step for " + seen.word() + " does not hold needle and probe still.");
        }
        SightStep last = path.get(path.size() - 1);
        if (!last.limits().endsPass() || last.hands().needle() != NeedleUse.WITHDRAWN) {
            throw new IllegalArgumentException(
                    "The last step for " + seen.word() + " does not withdraw and end the pass.");
        }
        if (path.stream().filter(step -> step.limits().endsPass()).count() != 1) {
            throw new IllegalArgumentException("A pass for " + seen.word() + " ends more than once.");
        }
    }

    private static List<SightStep> stepsFor(List<SightStep> steps, Seen seen) {
        return steps.stream().filter(step -> step.when().contains(seen)).toList();
    }

    /** The steps for what is seen, in order. */
    public List<SightStep> stepsFor(Seen seen) {
        return stepsFor(steps, seen);
    }
}
