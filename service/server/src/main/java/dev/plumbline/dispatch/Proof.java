// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import dev.plumbline.archive.Dispatch.Answer;
import java.time.Duration;
import java.util.Optional;

/**
 * What came of looking whether a sent object is really there.
 *
 * @param answer what was seen or heard, in words
 * @param notBefore when the archive says how long to wait
 */
record Proof(Finding finding, Answer answer, Optional<Duration> notBefore) {
    /** What was found. */
    enum Finding {
        /** Read back and equal, or committed to. */
        PROVED,
        /** Asked for; the answer comes by itself. */
        ASKED,
        /** Not there: to be sent again. */
        MISSING,
        /** Something else is there. */
        DIFFERENT,
        /** Could not be found out of this object just now. */
        LATER,
        /** The archive cannot be asked just now, whatever the object. */
        DESTINATION_LATER,
        /** This destination offers no way to find out. */
        NOT_OFFERED
    }

    static Proof asked(String words, Duration patience) {
        return new Proof(Finding.ASKED, new Answer("", words), Optional.of(patience));
    }

    static Proof of(Finding finding, String words) {
        return new Proof(finding, new Answer("", words), Optional.empty());
    }
}
