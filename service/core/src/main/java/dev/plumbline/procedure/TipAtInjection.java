// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.procedure;

import dev.plumbline.sight.Seen;
import java.util.Optional;

/** Whether the tip was seen whenever something was injected to block. */
public enum TipAtInjection {
    YES("yes"),
    /** At least once it was not. */
    NO("no"),
    /** At least once nobody noted the view before it, or was not sure. */
    NOT_SURE("notSure");

    private final String word;

    TipAtInjection(String word) {
        this.word = word;
    }

    public String word() {
        return word;
    }

    /**
     * From the last note of the view before each injection; fluid given to find the tip does not count. Empty when nothing was
     * injected.
     */
    public static Optional<TipAtInjection> of(ProcedureLog log) {
        Optional<Seen> view = Optional.empty();
        Optional<TipAtInjection> worst = Optional.empty();
        for (LoggedEvent event : log.standing()) {
            if (event.what() instanceof Happening.Sight sight) {
                view = Optional.of(sight.seen());
            } else if (event.what() instanceof Happening.Puncture) {
                view = Optional.empty();
            } else if (event.what() instanceof Happening.Aliquot aliquot && !aliquot.hydrolocation()) {
                worst = Optional.of(worse(worst, at(view)));
            }
        }
        return worst;
    }

    private static TipAtInjection at(Optional<Seen> view) {
        if (view.isEmpty() || view.get() == Seen.NOT_SURE) {
            return NOT_SURE;
        }
        return view.get().tipKnown() ? YES : NO;
    }

    /** Not seen outweighs not noted, which outweighs seen. */
    private static TipAtInjection worse(Optional<TipAtInjection> one, TipAtInjection other) {
        if (one.isEmpty()) {
            return other;
        }
        return one.get() == NO || other == NO ? NO : one.get() == NOT_SURE ? NOT_SURE : other;
    }
}
