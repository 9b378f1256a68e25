// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.procedure;

import dev.plumbline.geometry.Reason;
import java.time.Duration;

/** A time that was taken, or why it is not known. */
public sealed interface Elapsed {
    record Known(Duration duration) implements Elapsed {}

    record Unknown(Reason reason) implements Elapsed {}

    /** Not both ends were entered while they happened. */
    static Elapsed notLoggedLive() {
        return new Unknown(Reason.NOT_LOGGED_LIVE);
    }
}
