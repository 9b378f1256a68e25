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
     * All of one destination in one state, not released, with companions composed; the oldest first. Thousands may wait:
     * each is read with {@link #get} when its turn comes.
     */
    List<Waiting> waiting(String destination, Dispatch.State state);

    /** Every dispatch with a part in this storage commitment transaction. */
    List<Dispatch> ofTransaction(String transactionUid);

    List<Dispatch.Count> counts();

    /**
     * The oldest that is not released and still has a way to go: queued or held, whatever its destination, or sent to one of
     * those that offer a proof.
     */
    Optional<Dispatch> oldestUnproved(Collection<String> provable);

    /** Keeps the parts and the progress of a dispatch as they are now. */
    void update(Dispatch dispatch);

    /** Changes a dispatch from what it is now, with nobody else between reading and writing. */
    void change(long id, UnaryOperator<Dispatch> change);

    /** Gives a dispatch up. */
    void release(long id, Instant when);
}
