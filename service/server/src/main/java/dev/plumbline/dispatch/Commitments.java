// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import dev.plumbline.archive.Dispatch;
import dev.plumbline.archive.Dispatch.Answer;
import dev.plumbline.archive.Dispatch.Part;
import dev.plumbline.archive.Dispatch.State;
import dev.plumbline.archive.Dispatches;
import dev.plumbline.dicom.DataSet;
import dev.plumbline.dicom.Tag;
import dev.plumbline.dimse.Reply;
import dev.plumbline.dimse.Status;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Reports on storage commitment. Source: DICOM PS3.4, J.3.3; failure reasons PS3.3, C.14.1.1. */
final class Commitments {
    private static final Logger LOG = LoggerFactory.getLogger(Commitments.class);

    private final Dispatches dispatches;
    private final Clock clock;
    private final Runnable queuedAgain;

    /**
     * Keeps what is reported.
     *
     * @param queuedAgain called after something was queued again, so that it goes at once
     */
    Commitments(Dispatches dispatches, Clock clock, Runnable queuedAgain) {
        this.dispatches = dispatches;
        this.clock = clock;
        this.queuedAgain = queuedAgain;
    }

    /**
     * Takes a report in.
     *
     * @param all whether the archive says that nothing failed
     */
    Reply take(DataSet information, boolean all) {
        String transaction = information.string(Tag.TRANSACTION_UID).orElse("");
        List<Dispatch> about = transaction.isEmpty() ? List.of() : dispatches.ofTransaction(transaction);
        if (about.isEmpty()) {
            return Reply.of(Status.INVALID_ARGUMENT, "No commitment was asked for in this transaction.");
        }
        Map<String, DataSet> failed = byInstance(information, Tag.FAILED_SOP_SEQUENCE);
        Map<String, DataSet> committed = byInstance(information, Tag.REFERENCED_SOP_SEQUENCE);
        for (Dispatch each : about) {
            Dispatch now = dispatches.change(each.id(), dispatch -> {
                List<Part> parts = dispatch.parts().stream()
                        .map(part -> reported(part, transaction, committed, failed))
                        .toList();
                return dispatch.now(parts, dispatch.progress());
            });
            LOG.info(
                    "The archive reported on dispatch {}, which is {} now.",
                    now.id(),
                    now.state().word());
            if (now.state() == State.QUEUED) {
                queuedAgain.run();
            }
        }
        boolean contradicts = all && !failed.isEmpty();
        return contradicts ? Reply.of(Status.INVALID_ARGUMENT, "Event 1 came with failed instances.") : Reply.SUCCESS;
    }

    private static Map<String, DataSet> byInstance(DataSet information, int sequence) {
        return information.items(sequence).stream()
                .collect(Collectors.toMap(
                        item -> item.string(Tag.REFERENCED_SOP_INSTANCE_UID).orElse(""),
                        Function.identity(),
                        (first, again) -> first));
    }

    /** Whether a failure reason says that the archive does not have the object, so that it is sent again. */
    static boolean isMissing(int reason) {
        return Status.of(reason) == Status.NO_SUCH_INSTANCE;
    }

    /**
     * That an archive commits to an object holds in whatever transaction it says so, and though it is on its way to it again
     * meanwhile; that it does not holds in the last one only.
     */
    private Part reported(Part part, String transaction, Map<String, DataSet> committed, Map<String, DataSet> failed) {
        boolean open = part.state() == State.SENT || part.state() == State.QUEUED;
        DataSet failure = failed.get(part.sopInstanceUid());
        if (open && failure == null && committed.containsKey(part.sopInstanceUid())) {
            return part.now(State.PROVED, new Answer("", "The archive committed to it."), clock.instant());
        }
        boolean last = part.asked().transactionUid().equals(Optional.of(transaction));
        if (failure == null || part.state() != State.SENT || !last) {
            return part;
        }
        int reason = failure.integer(Tag.FAILURE_REASON).orElse(Status.PROCESSING_FAILURE.code());
        Answer answer = new Answer(
                String.format("%04X", reason),
                "The archive does not commit to it: " + Status.of(reason).words() + ".");
        boolean missing = isMissing(reason);
        return part.now(missing ? State.QUEUED : State.SENT, answer, clock.instant());
    }
}
