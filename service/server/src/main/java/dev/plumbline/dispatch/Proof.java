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
        /** Commitment was asked for; the report comes by itself, or it is asked again at its time. */
        ASKED,
        /** Not there, or not yet. */
        MISSING,
        /** Something else is there. */
        DIFFERENT,
        /** Our own file is not what it was: nothing can be compared with it. */
        DAMAGED,
        /** Could not be found out of this object just now. */
        LATER,
        /** The archive cannot be asked just now, whatever the object. */
        DESTINATION_LATER,
        /** This destination offers no way to find out just now. */
        NOT_OFFERED,
        /** Every way was tried with this object, in vain. */
        UNCONFIRMED
    }

    static Proof asked(String words) {
        return of(Finding.ASKED, words);
    }

    static Proof of(Finding finding, String words) {
        return new Proof(finding, new Answer("", words), Optional.empty());
    }
}
