// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.sight;

import java.util.List;
import java.util.Optional;

/**
 * One rung of a ladder as the data file gives it.
 *
 * @param id names it within its ladder
 * @param code of the step in the private coding scheme, for the record; several steps may share one
 * @param when for which of the things seen it is meant
 * @param says action, its reason, and what must not be done meanwhile
 * @param hands what is moved and what is kept still
 * @param limits how often, and when
 */
public record SightStep(String id, Optional<String> code, List<Seen> when, Says says, Hands hands, Limits limits) {
    public SightStep {
        when = List.copyOf(when);
        if (when.isEmpty()) {
            throw new IllegalArgumentException("Step " + id + " is meant for nothing that can be seen.");
        }
    }

    /** The words of a step. */
    public record Says(String action, String reason, List<String> mustNot) {
        public Says {
            mustNot = List.copyOf(mustNot);
            if (action.isBlank() || reason.isBlank()) {
                throw new IllegalArgumentException("A step says what to do and why.");
            }
        }
    }

    /** What the hands do. */
    public record Hands(Part moves, Part keepsStill, NeedleUse needle, Measure measure) {}

    /**
     * When and how often.
     *
     * @param times at least 1: how often it may be tried before the next rung
     * @param onlyTooDeep meant only when the needle is deeper than intended
     * @param endsPass after it the pass is over and counted
     */
    public record Limits(int times, boolean onlyTooDeep, boolean endsPass) {
        public Limits {
            if (times < 1) {
                throw new IllegalArgumentException("A step can be tried at least once.");
            }
        }
    }
}
