// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import dev.plumbline.archive.HeldObject;
import dev.plumbline.dimse.Services;

/** The way to one archive. Used by one thread; whatever it opens stays open until it rests. */
interface Carrier extends AutoCloseable {
    /** Sends one object; never throws for what the archive does. */
    Outcome send(HeldObject object);

    /** What it takes to ask for commitment. */
    interface Asking {
        /** A UID that is durable here. */
        String transaction();

        /** Takes a report that comes on our own association. */
        Services reports();
    }

    /**
     * A sent object to be proved.
     *
     * @param askedBefore how often commitment was asked for
     * @param doubtful the archive did not just take it: only looking at what it has can tell
     */
    record Question(HeldObject object, int askedBefore, boolean doubtful, Asking asking) {}

    /** Looks whether a sent object is there, or asks the archive to commit to it. */
    Proof prove(Question question);

    /** Nothing to do for the moment: connections are given back. */
    void rest();

    @Override
    default void close() {
        rest();
    }
}
