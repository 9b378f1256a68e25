// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import dev.plumbline.dimse.Listener.Limits;
import dev.plumbline.peer.TestCertificates;
import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLEngine;
import javax.net.ssl.SSLException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A crowd that begins something and does not go on stands in nobody's way. TRUST 2.2 (slow-loris), T15, T16. */
class CrowdedDoorFlowTest {
    private static final int CROWD = Integer.getInteger("plumbline.slowSockets", 2_000);
    private static final Duration AT_ONCE = Duration.ofSeconds(1);
    private static final Duration WARM_UP = Duration.ofSeconds(5);

    /** Associations of {@link Limits#USUAL} and the threads that judge. */
    private static final int MOST_THREADS = 150;

    @TempDir
    Path folder;

    /** How somebody in the crowd begins; none goes on, none closes. */
    enum Beginning {
        NOTHING(),
        ONE_BYTE_OF_A_REQUEST(1),
        ONE_OTHER_BYTE(0),
        HALF_A_HEADER(PduType.RELEASE_RQ, 0, 0),
        A_HEADER_WITHOUT_ITS_BODY(PduType.DATA, 0, 0, 1, 0x80, 0),
        AN_ABORT(PduType.ABORT, 0, 0, 0, 0, 4, 0, 0, 0, 0),
        AN_UNKNOWN_PDU(9, 0, 0, 0, 0, 4, 0, 0, 0, 0),
        A_REQUEST_OF_A_STRANGER() {
            @Override
            byte[] bytes() {
                return request("STRANGER");
            }
        },
        A_TLS_HELLO() {
            @Override
            byte[] bytes() throws Exception {
                return hello();
            }
        };

        private final byte[] bytes;

        Beginning(int... bytes) {
            this.bytes = new byte[bytes.length];
            for (int i = 0; i < bytes.length; i++) {
                this.bytes[i] = (byte) bytes[i];
            }
        }

        byte[] bytes() throws Exception {
            return bytes.clone();
        }
    }

    private static byte[] request(String calling) {
        return AssociateWriter.request(new Proposal(
                new Proposal.AeTitles(OpenListener.OURS, calling),
                Proposal.DICOM_APPLICATION_CONTEXT,
                List.of(new Proposal.Context(1, SopClass.VERIFICATION, SopClass.PLAIN_SYNTAXES)),
                0,
                List.of()));
    }

    private static byte[] hello() throws Exception {
        SSLEngine engine = SSLContext.getDefault().createSSLEngine("127.0.0.1", 1);
        engine.setUseClientMode(true);
        ByteBuffer hello = ByteBuffer.allocate(engine.getSession().getPacketBufferSize());
        try {
            engine.wrap(ByteBuffer.allocate(0), hello);
        } catch (SSLException e) {
            throw new IOException(e);
        }
        hello.flip();
        byte[] bytes = new byte[hello.remaining()];
        hello.get(bytes);
        return bytes;
    }

    /** Opens the crowd; each has begun in its way. */
    private static void gather(List<Socket> crowd, int port, Beginning beginning) throws Exception {
        byte[] begun = beginning.bytes();
        for (int i = 0; i < CROWD; i++) {
            Socket socket = new Socket(InetAddress.getLoopbackAddress(), port);
            crowd.add(socket);
            socket.getOutputStream().write(begun);
        }
    }

    private static void disperse(List<Socket> crowd) throws IOException {
        for (Socket socket : crowd) {
            socket.close();
        }
    }

    private static Duration echo(Peer peer) throws IOException {
        long began = System.nanoTime();
        try (Association association = new Requestor(OpenListener.CALLER, Timeouts.USUAL)
                .open(peer, List.of(Wanted.use(SopClass.VERIFICATION, SopClass.PLAIN_SYNTAXES)))) {
            assertThat(new ServiceUser(association, Timeouts.USUAL).echo()).isEqualTo(Reply.SUCCESS);
        }
        return Duration.ofNanos(System.nanoTime() - began);
    }

    private static long threads() {
        return Thread.getAllStackTraces().keySet().stream()
                .filter(thread -> thread.getName().startsWith("dimse-"))
                .count();
    }

    @ParameterizedTest
    @EnumSource(Beginning.class)
    void servesAValidSenderAtOnceBesideACrowd(Beginning beginning) throws Exception {
        List<Socket> crowd = new ArrayList<>();
        try (OpenListener listener = new OpenListener()) {
            assertThat(echo(listener.peer())).isLessThan(WARM_UP);
            gather(crowd, listener.port(), beginning);
            assertThat(echo(listener.peer())).isLessThan(AT_ONCE);
            assertThat(threads()).isLessThan(MOST_THREADS);
        } finally {
            disperse(crowd);
        }
    }

    @ParameterizedTest
    @EnumSource(Beginning.class)
    void servesAValidSenderOverTlsAtOnceBesideACrowd(Beginning beginning) throws Exception {
        TestCertificates ours = TestCertificates.make(folder, "ours", "127.0.0.1");
        SSLContext context = ours.trusting(ours);
        List<Socket> crowd = new ArrayList<>();
        try (OpenListener listener = new OpenListener(Limits.USUAL, Timeouts.USUAL, Optional.of(context))) {
            Peer peer = new Peer(OpenListener.OURS, "127.0.0.1", listener.port(), Optional.of(() -> context));
            for (int i = 0; i < 5; i++) {
                assertThat(echo(peer)).isLessThan(WARM_UP);
            }
            gather(crowd, listener.port(), beginning);
            assertThat(echo(peer)).isLessThan(AT_ONCE);
            assertThat(threads()).isLessThan(MOST_THREADS);
        } finally {
            disperse(crowd);
        }
    }

    @Test
    void tellsWhoIsOneTooManyInsteadOfClosing() throws Exception {
        int most = 20;
        List<Association> open = new ArrayList<>();
        List<Socket> crowd = new ArrayList<>();
        try (OpenListener listener = new OpenListener(new Limits(most, most), Timeouts.USUAL, Optional.empty())) {
            for (int i = 0; i < most; i++) {
                open.add(listener.open(OpenListener.storage()));
            }
            byte[] request = request(OpenListener.CALLER);
            for (int i = 0; i < 10 * most; i++) {
                Socket socket = new Socket(InetAddress.getLoopbackAddress(), listener.port());
                crowd.add(socket);
                socket.setSoTimeout(10_000);
                socket.getOutputStream().write(request);
            }
            for (Socket socket : crowd) {
                assertThat(socket.getInputStream().readNBytes(10))
                        .containsExactly(PduType.ASSOCIATE_RJ, 0, 0, 0, 0, 4, 0, 2, 3, 2);
            }
            PeerFailure failure = catchThrowableOfType(PeerFailure.class, () -> listener.open(OpenListener.storage()));
            assertThat(failure.kind()).isEqualTo(PeerFailure.Kind.REJECTED_TRANSIENT);
            open.forEach(Association::close);
            long end = System.nanoTime() + WARM_UP.toNanos();
            while (listener.associations() > 0 && System.nanoTime() < end) {
                Thread.onSpinWait();
            }
            assertThat(echo(listener.peer())).isLessThan(WARM_UP);
        } finally {
            disperse(crowd);
        }
    }

    @Test
    void closesWhoWasRejectedAndStaysWhenArtimExpires() throws Exception {
        Timeouts impatient = new Timeouts(
                Duration.ofMillis(150), Duration.ofSeconds(30), Duration.ofSeconds(5), Duration.ofSeconds(5));
        try (OpenListener listener = new OpenListener(Limits.USUAL, impatient, Optional.empty());
                Socket stranger = new Socket(InetAddress.getLoopbackAddress(), listener.port())) {
            stranger.setSoTimeout(10_000);
            stranger.getOutputStream().write(request("STRANGER"));
            assertThat(stranger.getInputStream().readNBytes(10))
                    .containsExactly(PduType.ASSOCIATE_RJ, 0, 0, 0, 0, 4, 0, 1, 1, 3);
            assertThat(stranger.getInputStream().read()).isEqualTo(-1);
        }
    }
}
