// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.procedure;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.util.List;

/**
 * The spoken check of two people immediately before the needle; one for each puncture site.
 *
 * <p>Source: preparation, stop, block immediately after: SALG and RA-UK 2021 (read as their pages).
 *
 * @param names of the two who spoke it
 * @param block as spoken
 * @param side as spoken
 */
public record StopMoment(List<String> names, String block, Laterality side, boolean markSeen, boolean consentSeen) {
    /**
     * Checks that two people stand for it.
     *
     * @throws Refusal {@link Problem.InvalidValue} unless there are two different names
     */
    public StopMoment {
        names = List.copyOf(names);
        if (names.size() != 2
                || names.stream().anyMatch(String::isBlank)
                || names.get(0).strip().equalsIgnoreCase(names.get(1).strip())) {
            throw new Refusal(new Problem.InvalidValue(
                    "/names", "A stop moment is spoken by two people.", "Give the names of the two."));
        }
        if (block.isBlank()) {
            throw new Refusal(new Problem.MissingField("/block", "Give the block as it was spoken."));
        }
    }
}
