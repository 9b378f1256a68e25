// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import dev.plumbline.dicom.DataSet;
import dev.plumbline.dicom.Identifiers;
import dev.plumbline.dicom.Tag;
import dev.plumbline.dicom.TransferSyntax;
import dev.plumbline.dimse.Agreement.Answer;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.Semaphore;

/** An archive that takes every object, and that is asked to commit to it. It has nothing to hand back. */
public final class CommittingPeer extends TalkingPeer {
    private static final Acceptance ANYBODY =
            new Acceptance("COMMITS", new Callers(Map.of("PLUMBLINE", List.of(AddressRange.of("127.0.0.0/8")))));

    /** The data set of each request, in Explicit VR Little Endian. */
    public final List<byte[]> requests = new CopyOnWriteArrayList<>();

    /** Statuses that we were answered for reports on the association of the request. */
    public final List<Integer> answers = new CopyOnWriteArrayList<>();

    /** How often it was asked to hand something back. */
    public final List<Integer> retrievals = new CopyOnWriteArrayList<>();

    /** One for each object that it took. */
    public final Semaphore stored = new Semaphore(0);

    /** One for each time that it was asked to commit, and had not yet answered. */
    public final Semaphore asked = new Semaphore(0);

    private final Manner manner;
    private final boolean retrieves;

    /** When it reports, if ever on the same association. */
    public enum Manner {
        BEFORE_THE_ANSWER,
        AFTER_THE_ANSWER,
        /** Says of each of the first two objects, after the answer, that it does not have it. */
        MISSES_AT_FIRST,
        NOT_HERE,
        /** Answers the request with 0110. */
        FAILS,
        /** Aborts instead of an answer. */
        ABORTS
    }

    /** @param retrieves whether it offers C-GET, and then has nothing */
    public CommittingPeer(Manner manner, boolean retrieves) throws IOException {
        super("COMMITS");
        this.manner = manner;
        this.retrieves = retrieves;
        begin();
    }

    @Override
    Agreement judged(Proposal proposal, InetAddress from) throws Association.Rejected {
        Agreement agreed = ANYBODY.judge(proposal, from);
        List<Answer> contexts = new ArrayList<>(agreed.answers());
        for (int i = 0; i < contexts.size(); i++) {
            Proposal.Context context = proposal.contexts().get(i);
            if (retrieves && context.abstractSyntax().equals(SopClass.STUDY_ROOT_GET)) {
                contexts.set(
                        i,
                        new Answer(
                                context.id(),
                                Agreement.Result.ACCEPTANCE,
                                context.transferSyntaxes().get(0)));
            }
        }
        return new Agreement(agreed.titles(), contexts, agreed.maxPduBytes(), agreed.roles());
    }

    @Override
    void answer(Association association, Message message) throws IOException {
        switch (message.commandField()) {
            case CommandField.N_ACTION_RQ -> commit(association, message);
            case CommandField.C_GET_RQ -> {
                message.smallDataSet();
                retrievals.add(1);
                answer(association, message, Status.SUCCESS);
            }
            default -> {
                message.data().orElseThrow().transferTo(OutputStream.nullOutputStream());
                answer(association, message, Status.SUCCESS);
                stored.release();
            }
        }
    }

    private static void answer(Association association, Message message, Status status) throws IOException {
        association.send(
                message.contextId(), CommandSet.response(message.command(), new Reply(status.code(), "as told")));
    }

    private void commit(Association association, Message message) throws IOException {
        byte[] information = message.smallDataSet();
        requests.add(information);
        asked.release();
        switch (manner) {
            case BEFORE_THE_ANSWER -> {
                report(association, message.contextId(), information);
                answer(association, message, Status.SUCCESS);
            }
            case AFTER_THE_ANSWER -> {
                answer(association, message, Status.SUCCESS);
                report(association, message.contextId(), information);
            }
            case MISSES_AT_FIRST -> {
                answer(association, message, Status.SUCCESS);
                if (requests.size() <= 2) {
                    report(association, message.contextId(), information);
                }
            }
            case NOT_HERE -> answer(association, message, Status.SUCCESS);
            case FAILS -> answer(association, message, Status.PROCESSING_FAILURE);
            case ABORTS -> association.abort();
        }
    }

    /** The same objects as failed, with reason 0112. Source: DICOM PS3.3, C.14. */
    private static byte[] missing(byte[] information) {
        TransferSyntax syntax = TransferSyntax.of("1.2.840.10008.1.2.1").orElseThrow();
        DataSet asked = Identifiers.read(information, syntax);
        List<DataSet> failed = asked.items(Tag.REFERENCED_SOP_SEQUENCE).stream()
                .map(item -> item.put(Tag.FAILURE_REASON, Status.NO_SUCH_INSTANCE.code()))
                .toList();
        DataSet report = new DataSet()
                .put(Tag.TRANSACTION_UID, asked.string(Tag.TRANSACTION_UID).orElseThrow())
                .put(Tag.FAILED_SOP_SEQUENCE, failed);
        return Identifiers.write(report, syntax);
    }

    private static void event(Association association, int contextId, int type, byte[] information) throws IOException {
        CommandSet event = new CommandSet()
                .putUid(CommandElement.AFFECTED_SOP_CLASS_UID, SopClass.STORAGE_COMMITMENT)
                .put(CommandElement.COMMAND_FIELD, CommandField.N_EVENT_REPORT_RQ)
                .put(CommandElement.MESSAGE_ID, association.nextMessageId())
                .putUid(CommandElement.AFFECTED_SOP_INSTANCE_UID, SopClass.STORAGE_COMMITMENT_INSTANCE)
                .put(CommandElement.EVENT_TYPE_ID, type);
        association.send(contextId, event, new ByteArrayInputStream(information));
    }

    private void report(Association association, int contextId, byte[] information) throws IOException {
        boolean misses = manner == Manner.MISSES_AT_FIRST;
        event(association, contextId, misses ? 2 : 1, misses ? missing(information) : information);
        Message answer = association.nextMessage(Timeouts.USUAL.response()).orElseThrow();
        if (answer.commandField() == CommandField.N_ACTION_RQ) {
            byte[] crossing = answer.smallDataSet();
            requests.add(crossing);
            answer(association, answer, Status.SUCCESS);
            answers.add(association
                    .nextMessage(Timeouts.USUAL.response())
                    .orElseThrow()
                    .status());
            report(association, contextId, crossing);
        } else {
            answers.add(answer.status());
        }
    }
}
