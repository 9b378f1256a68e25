// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import java.time.Duration;
import org.slf4j.Logger;

/** What went wrong with callers, in the log: a line a second at most, so that a crowd of them cannot fill the disk. */
final class Complaints {
    /** Source: design choice. */
    private static final Duration QUIET = Duration.ofSeconds(1);

    private final Logger log;
    private long next = System.nanoTime();
    private long unsaid;

    Complaints(Logger log) {
        this.log = log;
    }

    /** Says it, and how often nothing was said before; or counts it. */
    synchronized void tell(String what) {
        long now = System.nanoTime();
        if (now - next < 0) {
            unsaid++;
            return;
        }
        next = now + QUIET.toNanos();
        log.info("{} ({} more before)", what, unsaid);
        unsaid = 0;
    }
}
