// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;

/** An archive that takes every object and answers as it is told, true or not. */
public final class LiarArchive implements AutoCloseable {
    private static final int LATE_MS = 1_500;
    private static final Acceptance ANYBODY =
            new Acceptance("LIAR", new Callers(Map.of("PLUMBLINE", List.of(AddressRange.of("127.0.0.0/8")))));

    private final ServerSocket server;
    private final Lie lie;
    private final int status;
    private final AtomicInteger received = new AtomicInteger();
    private final CountDownLatch over = new CountDownLatch(1);

    /** What it does once it has the whole object. */
    public enum Lie {
        STATUS,
        WRONG_MESSAGE_ID,
        WRONG_COMMAND,
        NO_STATUS,
        NO_ANSWER,
        /** Success, but so late that nobody waits for it any more. */
        LATE_ANSWER,
        RELEASE,
        ABORT,
        ABORT_AFTER_ANSWER,
        CLOSE
    }

    /** Answers the status, or lies. */
    public LiarArchive(Lie lie, int status) throws IOException {
        this.lie = lie;
        this.status = status;
        this.server = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
        Thread thread = new Thread(this::run, "liar");
        thread.setDaemon(true);
        thread.start();
    }

    public Peer peer() {
        return new Peer("LIAR", "127.0.0.1", server.getLocalPort(), Optional.empty());
    }

    /** Whole objects that came in. */
    public int received() {
        return received.get();
    }

    private void run() {
        while (!server.isClosed()) {
            try {
                Socket socket = server.accept();
                Thread thread = new Thread(() -> converse(socket), "liar-talks");
                thread.setDaemon(true);
                thread.start();
            } catch (IOException e) {
                return; // the test is over
            }
        }
    }

    private void converse(Socket socket) {
        try (socket) {
            serve(socket);
        } catch (IOException e) {
            Thread.onSpinWait(); // the other end left
        }
    }

    private void serve(Socket socket) throws IOException {
        Connection connection = new Connection(socket, new byte[0], Timeouts.USUAL.idle());
        Association association = Association.accept(
                        connection, Timeouts.USUAL, proposal -> ANYBODY.judge(proposal, socket.getInetAddress()))
                .orElseThrow();
        for (Optional<Message> next = association.nextMessage(Timeouts.USUAL.idle());
                next.isPresent();
                next = association.nextMessage(Timeouts.USUAL.idle())) {
            next.get().data().orElseThrow().transferTo(OutputStream.nullOutputStream());
            received.incrementAndGet();
            answer(association, connection, next.get());
        }
    }

    private void answer(Association association, Connection connection, Message message) throws IOException {
        CommandSet answer = CommandSet.response(message.command(), new Reply(status, "in its own words"));
        int id = message.command().number(CommandElement.MESSAGE_ID).orElseThrow();
        switch (lie) {
            case STATUS -> association.send(message.contextId(), answer);
            case WRONG_MESSAGE_ID ->
                association.send(message.contextId(), answer.put(CommandElement.MESSAGE_ID_BEING_RESPONDED_TO, id + 1));
            case WRONG_COMMAND ->
                association.send(
                        message.contextId(),
                        answer.put(CommandElement.COMMAND_FIELD, CommandField.C_FIND_RQ | CommandField.RESPONSE));
            case NO_STATUS ->
                association.send(
                        message.contextId(),
                        new CommandSet()
                                .put(CommandElement.COMMAND_FIELD, CommandField.C_STORE_RQ | CommandField.RESPONSE)
                                .put(CommandElement.MESSAGE_ID_BEING_RESPONDED_TO, id)
                                .put(CommandElement.COMMAND_DATA_SET_TYPE, CommandSet.NO_DATA_SET));
            case NO_ANSWER -> awaitEnd();
            case LATE_ANSWER -> {
                pause();
                association.send(message.contextId(), answer);
            }
            case RELEASE -> association.release();
            case ABORT -> association.abort();
            case ABORT_AFTER_ANSWER -> {
                association.send(message.contextId(), answer);
                association.abort();
            }
            case CLOSE -> connection.close();
        }
    }

    private static void pause() {
        try {
            Thread.sleep(LATE_MS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void awaitEnd() {
        try {
            over.await();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    @Override
    public void close() throws IOException {
        over.countDown();
        server.close();
    }
}
