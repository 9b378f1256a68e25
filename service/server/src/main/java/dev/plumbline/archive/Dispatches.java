// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;

/** The queue of records on their way, as the store keeps it. What a method returned from is durable. */
public interface Dispatches {
    /** Newest first. */
    List<Dispatch> list(Optional<Dispatch.State> state, int limit, int offset);

    Optional<Dispatch> get(long id);

    /** Of every revision of a case, newest first. */
    List<Dispatch> ofCase(String caseId);

    /** One that waits, as far as it takes to say whose turn it is. */
    record Waiting(long id, String studyInstanceUid) {}

    /**
     * All of one destination in one state, not released, with companions composed; the oldest first. Of those that are sent
     * only the ones after which something may still be asked. Thousands may wait: each is read with {@link #get} when its
     * turn comes.
     */
    List<Waiting> waiting(String destination, Dispatch.State state);

    /** Every dispatch with a part for which commitment was ever asked in this transaction. */
    List<Dispatch> ofTransaction(String transactionUid);

    List<Dispatch.Count> counts();

    /**
     * How many dispatches that are not released want a word.
     *
     * @param altered an archive altered one of its objects
     * @param unconfirmed an object is sent, and every way to prove that was tried
     */
    record Remarks(int altered, int unconfirmed) {}

    Remarks remarks();

    /**
     * The oldest that is not released and still has a way to go: queued or held, whatever its destination, or sent to one of
     * those that offer a proof and not yet settled.
     */
    Optional<Dispatch> oldestUnproved(Collection<String> provable);

    /** Keeps the parts and the progress of a dispatch as they are now. */
    void update(Dispatch dispatch);

    /**
     * Changes a dispatch from what it is now, with nobody else between reading and writing.
     *
     * @return what it is then
     */
    Dispatch change(long id, UnaryOperator<Dispatch> change);

    /** Gives a dispatch up. */
    void release(long id, Instant when);
}
