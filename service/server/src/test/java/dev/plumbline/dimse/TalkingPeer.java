// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.List;
import java.util.Optional;

/** Another application entity as a test wants it: takes associations and answers each message in its own way. */
abstract class TalkingPeer implements AutoCloseable {
    private final ServerSocket server = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
    private final String aeTitle;

    TalkingPeer(String aeTitle) throws IOException {
        this.aeTitle = aeTitle;
    }

    /** Begins to listen; called last by whoever is made. */
    final void begin() {
        inBackground(this::run);
    }

    public final Peer peer() {
        return new Peer(aeTitle, "127.0.0.1", server.getLocalPort(), Optional.empty());
    }

    private void run() {
        while (!server.isClosed()) {
            try {
                Socket socket = server.accept();
                inBackground(() -> converse(socket));
            } catch (IOException e) {
                return; // the test is over
            }
        }
    }

    private void inBackground(Runnable work) {
        Thread thread = new Thread(work, aeTitle);
        thread.setDaemon(true);
        thread.start();
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
                answer(association, next.get());
            }
        } catch (IOException e) {
            Thread.onSpinWait(); // the other end left
        }
    }

    /** Everything that is proposed, in its first transfer syntax; may be narrowed. */
    Agreement judged(Proposal proposal, InetAddress from) throws Association.Rejected {
        List<Agreement.Answer> answers = proposal.contexts().stream()
                .map(context -> new Agreement.Answer(
                        context.id(),
                        Agreement.Result.ACCEPTANCE,
                        context.transferSyntaxes().get(0)))
                .toList();
        return new Agreement(proposal.titles(), answers, 0, proposal.roles());
    }

    /** Reads what the message holds, and answers it. */
    abstract void answer(Association association, Message message) throws IOException;

    @Override
    public void close() throws IOException {
        server.close();
    }
}
