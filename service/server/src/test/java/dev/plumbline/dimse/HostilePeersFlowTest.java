// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.dimse.Listener.Limits;
import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.net.SocketException;
import java.nio.ByteBuffer;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Peers that send what no peer should: the listener lives, nobody is held up, no association stays. TRUST 2.2, T14, T15. */
class HostilePeersFlowTest {
    private static final int SLOW = Integer.getInteger("plumbline.slowSockets", 2_000);
    private static final int FUZZED = Integer.getInteger("plumbline.fuzzedPdus", 5_000);
    private static final long SEED = Long.getLong("plumbline.seed", 20261128L);
    private static final Duration AT_ONCE = Duration.ofSeconds(1);
    private static final Timeouts IMPATIENT =
            new Timeouts(Duration.ofMillis(150), Duration.ofMillis(500), Duration.ofSeconds(5), Duration.ofSeconds(5));

    private static byte[] request() {
        return AssociateWriter.request(new Proposal(
                new Proposal.AeTitles(OpenListener.OURS, OpenListener.CALLER),
                Proposal.DICOM_APPLICATION_CONTEXT,
                List.of(new Proposal.Context(1, SopClass.VERIFICATION, SopClass.PLAIN_SYNTAXES)),
                0,
                List.of()));
    }

    @Test
    void servesAValidSenderWhileThousandsSayNothing() throws Exception {
        try (OpenListener listener = new OpenListener()) {
            List<Socket> slow = new ArrayList<>();
            try {
                for (int i = 0; i < SLOW; i++) {
                    Socket socket = new Socket(InetAddress.getLoopbackAddress(), listener.port());
                    slow.add(socket);
                    if (i % 2 == 0) {
                        socket.getOutputStream().write(request(), 0, 1 + i % 50); // half a request, then silence
                    }
                }
                long began = System.nanoTime();
                try (Association association = listener.open(OpenListener.storage())) {
                    assertThat(new ServiceUser(association, Timeouts.USUAL).echo())
                            .isEqualTo(Reply.SUCCESS);
                }
                assertThat(Duration.ofNanos(System.nanoTime() - began)).isLessThan(AT_ONCE);
                assertThat(listener.associations()).isLessThanOrEqualTo(1);
            } finally {
                for (Socket socket : slow) {
                    socket.close();
                }
            }
        }
    }

    @Test
    void closesSilentConnectionsWhenArtimExpires() throws Exception {
        try (OpenListener listener = new OpenListener(Limits.USUAL, IMPATIENT, Optional.empty());
                Socket silent = new Socket(InetAddress.getLoopbackAddress(), listener.port())) {
            silent.setSoTimeout(10_000);
            assertThat(silent.getInputStream().read()).isEqualTo(-1);
        }
    }

    @Test
    void abortsWhatLiesAboutItsLength() throws Exception {
        try (OpenListener listener = new OpenListener(Limits.USUAL, IMPATIENT, Optional.empty())) {
            for (int length : new int[] {0x7fffffff, 0x80000000, 0xffffffff, 131_073}) {
                for (int type : new int[] {PduType.ASSOCIATE_RQ, PduType.DATA, PduType.ABORT, 9}) {
                    byte[] header = ByteBuffer.allocate(6)
                            .put((byte) type)
                            .put((byte) 0)
                            .putInt(length)
                            .array();
                    assertThat(ends(listener, header)).isTrue();
                    assertThat(ends(listener, request(), header)).isTrue();
                }
            }
            try (Association association = listener.open(OpenListener.storage())) {
                assertThat(association.isOpen()).isTrue();
            }
        }
    }

    @Test
    void survivesFuzzedPdus() throws Exception {
        Random random = new Random(SEED);
        System.out.println("fuzzed PDUs, seed " + SEED);
        try (OpenListener listener = new OpenListener(Limits.USUAL, IMPATIENT, Optional.empty())) {
            int sent = 0;
            while (sent < FUZZED) {
                sent += converse(listener, random);
            }
            for (int i = 0; i < 100 && listener.associations() > 0; i++) {
                Thread.sleep(100);
            }
            assertThat(listener.associations()).isZero();
            assertThat(listener.stored).isEmpty();
            try (Association association = listener.open(OpenListener.storage())) {
                assertThat(new ServiceUser(association, Timeouts.USUAL).echo()).isEqualTo(Reply.SUCCESS);
            }
        }
    }

    /** A conversation of random PDUs, most of them damaged in one place; gives how many were sent. */
    private static int converse(OpenListener listener, Random random) throws IOException {
        int count = 0;
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), listener.port())) {
            socket.setTcpNoDelay(true);
            byte[] first = random.nextInt(4) > 0 ? request() : damaged(request(), random);
            socket.getOutputStream().write(first);
            for (count = 1; count < 12; count++) {
                byte[] pdu = pdu(random);
                socket.getOutputStream().write(random.nextInt(3) > 0 ? damaged(pdu, random) : pdu);
            }
            socket.shutdownOutput();
            socket.setSoTimeout(10_000);
            socket.getInputStream().transferTo(OutputStream.nullOutputStream());
        } catch (SocketException e) {
            return Math.max(count, 1); // we were thrown out, as it should be
        }
        return count;
    }

    private static byte[] damaged(byte[] pdu, Random random) {
        byte[] bytes = pdu.clone();
        for (int i = random.nextInt(3); i >= 0; i--) {
            bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
        }
        return bytes;
    }

    private static byte[] pdu(Random random) {
        return switch (random.nextInt(8)) {
            case 0 -> request();
            case 1 -> AssociateWriter.reject(Rejection.NO_REASON);
            case 2 -> AssociateWriter.release(PduType.RELEASE_RQ);
            case 3 -> AssociateWriter.release(PduType.RELEASE_RP);
            case 4 -> AssociateWriter.abort(new Pdu.Abort(random.nextInt(3), random.nextInt(7)));
            case 5 -> AssociateWriter.accept(new Agreement(new Proposal.AeTitles("A", "B"), List.of(), 0, List.of()));
            default ->
                data(CommandSet.request(CommandField.C_ECHO_RQ, 1, SopClass.VERIFICATION)
                        .encode());
        };
    }

    private static byte[] data(byte[] command) {
        return AssociateWriter.pdu(
                PduType.DATA,
                ByteBuffer.allocate(6 + command.length)
                        .putInt(command.length + 2)
                        .put((byte) 1)
                        .put((byte) 3)
                        .put(command)
                        .array());
    }

    /** Whether the listener ends the connection after these bytes. */
    private static boolean ends(OpenListener listener, byte[]... messages) throws IOException {
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), listener.port())) {
            socket.setSoTimeout(10_000);
            for (byte[] message : messages) {
                socket.getOutputStream().write(message);
            }
            socket.getInputStream().transferTo(OutputStream.nullOutputStream());
            return true;
        } catch (SocketException e) {
            return true;
        }
    }
}
