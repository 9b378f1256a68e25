// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import dev.plumbline.archive.HeldObject;

/** The way to one archive. Used by one thread; whatever it opens stays open until it rests. */
interface Carrier extends AutoCloseable {
    /** Sends one object; never throws for what the archive does. */
    Outcome send(HeldObject object);

    /**
     * A sent object to be proved.
     *
     * @param transactionUid under which commitment may be asked for; already durable here
     * @param askedBefore how often that was done in vain
     */
    record Question(HeldObject object, String transactionUid, int askedBefore) {}

    /** Looks whether a sent object is there, or asks the archive to commit to it. */
    Proof prove(Question question);

    /** Nothing to do for the moment: connections are given back. */
    void rest();

    @Override
    default void close() {
        rest();
    }
}
