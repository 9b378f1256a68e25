// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import dev.plumbline.archive.HeldObject.Identity;
import dev.plumbline.problem.Problem;
import java.util.Optional;
import java.util.function.Function;

/** What became of an object that was sent. */
public sealed interface Reception {
    /**
     * On disk and in the index.
     *
     * @param known the same object was held before
     */
    record Kept(HeldObject object, boolean known) implements Reception {}

    /**
     * Not kept.
     *
     * @param who the object, as far as its bytes could be read
     */
    record Refused(Problem problem, Optional<Identity> who) implements Reception {}

    default <T> T fold(Function<Kept, T> kept, Function<Refused, T> refused) {
        return this instanceof Kept k ? kept.apply(k) : refused.apply((Refused) this);
    }
}
