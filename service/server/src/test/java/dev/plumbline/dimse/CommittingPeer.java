// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import dev.plumbline.dimse.Agreement.Answer;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.Semaphore;

/** An archive that takes every object, and that is asked to commit to it. It has nothing to hand back. */
public final class CommittingPeer implements AutoCloseable {
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

    private final ServerSocket server;
    private final Manner manner;
    private final boolean retrieves;

    /** When it reports, if ever on the same association. */
    public enum Manner {
        BEFORE_THE_ANSWER,
        AFTER_THE_ANSWER,
        NOT_HERE,
        /** Answers the request with 0110. */
        FAILS,
        /** Aborts instead of an answer. */
        ABORTS
    }

    /** @param retrieves whether it offers C-GET, and then has nothing */
    public CommittingPeer(Manner manner, boolean retrieves) throws IOException {
        this.manner = manner;
        this.retrieves = retrieves;
        this.server = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
        Thread thread = new Thread(this::run, "committing");
        thread.setDaemon(true);
        thread.start();
    }

    public Peer peer() {
        return new Peer("COMMITS", "127.0.0.1", server.getLocalPort(), Optional.empty());
    }

    private void run() {
        while (!server.isClosed()) {
            try {
                Socket socket = server.accept();
                Thread thread = new Thread(() -> converse(socket), "committing-talks");
                thread.setDaemon(true);
                thread.start();
            } catch (IOException e) {
                return; // the test is over
            }
        }
    }

    private void converse(Socket socket) {
        try (socket) {
            Connection connection = new Connection(socket, new byte[0], Timeouts.USUAL.idle());
            Association association = Association.accept(
                            connection, Timeouts.USUAL, proposal -> judged(proposal, socket.getInetAddress()))
                    .orElseThrow();
            for (Optional<Message> next = association.nextMessage(Timeouts.USUAL.idle());
                    next.isPresent();
                    next = association.nextMessage(Timeouts.USUAL.idle())) {
                serve(association, next.get());
            }
        } catch (IOException e) {
            Thread.onSpinWait(); // the other end left
        }
    }

    private Agreement judged(Proposal proposal, InetAddress from) throws Association.Rejected {
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

    private void serve(Association association, Message message) throws IOException {
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
            case NOT_HERE -> answer(association, message, Status.SUCCESS);
            case FAILS -> answer(association, message, Status.PROCESSING_FAILURE);
            case ABORTS -> association.abort();
        }
    }

    private void report(Association association, int contextId, byte[] information) throws IOException {
        CommandSet event = new CommandSet()
                .putUid(CommandElement.AFFECTED_SOP_CLASS_UID, SopClass.STORAGE_COMMITMENT)
                .put(CommandElement.COMMAND_FIELD, CommandField.N_EVENT_REPORT_RQ)
                .put(CommandElement.MESSAGE_ID, association.nextMessageId())
                .putUid(CommandElement.AFFECTED_SOP_INSTANCE_UID, SopClass.STORAGE_COMMITMENT_INSTANCE)
                .put(CommandElement.EVENT_TYPE_ID, 1);
        association.send(contextId, event, new ByteArrayInputStream(information));
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

    @Override
    public void close() throws IOException {
        server.close();
    }
}
