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

/** An archive that takes everything, and answers a C-GET with an object of its own choice under a UID of its own choice. */
public final class HostileGetArchive implements AutoCloseable {
    private final ServerSocket server;
    private final Given given;
    private final AtomicInteger handedBack = new AtomicInteger();

    /**
     * What it hands back.
     *
     * @param uid in the command
     * @param dataSet Explicit VR Little Endian, without file meta information
     */
    @SuppressWarnings("ArrayRecordComponent") // handed over once, never compared
    public record Given(String sopClassUid, String uid, byte[] dataSet) {}

    public HostileGetArchive(Given given) throws IOException {
        this.given = given;
        this.server = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
        Thread thread = new Thread(this::run, "hostile-archive");
        thread.setDaemon(true);
        thread.start();
    }

    public Peer peer() {
        return new Peer("HOSTILE", "127.0.0.1", server.getLocalPort(), Optional.empty());
    }

    /** How often it handed its object back, and was answered. */
    public int handedBack() {
        return handedBack.get();
    }

    private void run() {
        while (!server.isClosed()) {
            try {
                Socket socket = server.accept();
                Thread thread = new Thread(() -> converse(socket), "hostile-archive-talks");
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
        Association association = Association.accept(connection, Timeouts.USUAL, HostileGetArchive::everything)
                .orElseThrow();
        for (Optional<Message> next = association.nextMessage(Timeouts.USUAL.idle());
                next.isPresent();
                next = association.nextMessage(Timeouts.USUAL.idle())) {
            Message message = next.get();
            message.data().orElseThrow().transferTo(OutputStream.nullOutputStream());
            if (message.commandField() == CommandField.C_GET_RQ) {
                handBack(association);
            }
            association.send(message.contextId(), CommandSet.response(message.command(), Reply.SUCCESS));
        }
    }

    private void handBack(Association association) throws IOException {
        int context = association.proposal().contexts().stream()
                .filter(each -> each.abstractSyntax().equals(given.sopClassUid()))
                .findFirst()
                .orElseThrow()
                .id();
        CommandSet request = CommandSet.request(CommandField.C_STORE_RQ, 77, given.sopClassUid())
                .putUid(CommandElement.AFFECTED_SOP_INSTANCE_UID, given.uid())
                .put(CommandElement.PRIORITY, 0);
        association.send(context, request, new ByteArrayInputStream(given.dataSet()));
        association.nextMessage(Timeouts.USUAL.response()).orElseThrow();
        handedBack.incrementAndGet();
    }

    @Override
    public void close() throws IOException {
        server.close();
    }
}
