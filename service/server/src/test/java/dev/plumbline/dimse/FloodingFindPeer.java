// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import dev.plumbline.dimse.Agreement.Answer;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;

/** Answers each C-FIND with so many matches of so many bytes, then with success. */
final class FloodingFindPeer implements AutoCloseable {
    private final ServerSocket server = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
    private final AtomicInteger sent = new AtomicInteger();
    private final int matches;
    private final int bytes;

    FloodingFindPeer(int matches, int bytes) throws IOException {
        this.matches = matches;
        this.bytes = bytes;
        Thread thread = new Thread(this::run, "flooding");
        thread.setDaemon(true);
        thread.start();
    }

    Peer peer() {
        return new Peer("FLOODS", "127.0.0.1", server.getLocalPort(), Optional.empty());
    }

    /** Matches that went out whole. */
    int sent() {
        return sent.get();
    }

    private void run() {
        while (!server.isClosed()) {
            try (Socket socket = server.accept()) {
                serve(socket);
            } catch (IOException e) {
                Thread.onSpinWait(); // the other end left, or the test is over
            }
        }
    }

    private static Agreement everything(Proposal proposal) {
        List<Answer> answers = proposal.contexts().stream()
                .map(context -> new Answer(
                        context.id(),
                        Agreement.Result.ACCEPTANCE,
                        context.transferSyntaxes().get(0)))
                .toList();
        return new Agreement(proposal.titles(), answers, 0, proposal.roles());
    }

    private void serve(Socket socket) throws IOException {
        Connection connection = new Connection(socket, new byte[0], Timeouts.USUAL.idle());
        Association association = Association.accept(connection, Timeouts.USUAL, FloodingFindPeer::everything)
                .orElseThrow();
        for (Optional<Message> next = association.nextMessage(Timeouts.USUAL.idle());
                next.isPresent();
                next = association.nextMessage(Timeouts.USUAL.idle())) {
            Message asked = next.get();
            asked.data().orElseThrow().transferTo(OutputStream.nullOutputStream());
            Reply pending = Reply.of(Status.PENDING, "");
            for (int i = 0; i < matches; i++) {
                CommandSet match = CommandSet.response(asked.command(), pending);
                association.send(asked.contextId(), match, new ByteArrayInputStream(new byte[bytes]));
                sent.incrementAndGet();
            }
            association.send(asked.contextId(), CommandSet.response(asked.command(), Reply.SUCCESS));
        }
    }

    @Override
    public void close() throws IOException {
        server.close();
    }
}
