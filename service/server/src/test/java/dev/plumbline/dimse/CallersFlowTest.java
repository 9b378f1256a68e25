// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import dev.plumbline.peer.TestCertificates;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.cert.CertificateFactory;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.net.ssl.SSLContext;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Who is let in, by AE title, address and certificate. TRUST 2.2 (AE-title spoofing). */
class CallersFlowTest {
    private static final String SELF = "127.0.0.1";

    @TempDir
    Path folder;

    private static Listener listener(Callers callers, Optional<SSLContext> tls) {
        return Listener.start(
                new Listener.Settings(
                        OpenListener.OURS,
                        new InetSocketAddress(InetAddress.getLoopbackAddress(), 0),
                        tls.map(each -> () -> each),
                        callers,
                        Listener.Limits.USUAL,
                        Timeouts.USUAL),
                new DeafServices());
    }

    /** Takes nothing; who is let in is asked here, not what is sent. */
    private static final class DeafServices implements Services {
        @Override
        public Reply store(Incoming object, InputStream file) {
            return Reply.of(Status.OUT_OF_RESOURCES, "");
        }

        @Override
        public Reply commitment(CommitmentReport report) {
            return Reply.of(Status.OUT_OF_RESOURCES, "");
        }
    }

    private static boolean isLetIn(Listener listener, String calling, Optional<SSLContext> tls) {
        Peer peer = new Peer(OpenListener.OURS, SELF, listener.port(), tls.map(each -> () -> each));
        try (Association association = new Requestor(calling, Timeouts.USUAL)
                .open(peer, List.of(Wanted.use(SopClass.VERIFICATION, SopClass.PLAIN_SYNTAXES)))) {
            return association.isOpen();
        } catch (PeerFailure e) {
            assertThat(e.kind()).isEqualTo(PeerFailure.Kind.REJECTED);
            assertThat(e).hasMessageContaining(Rejection.CALLING_AE_TITLE_NOT_RECOGNISED.words());
            return false;
        }
    }

    @ParameterizedTest
    @CsvSource({
        "US1, 127.0.0.1, US1, true",
        "US1, 127.0.0.0/8, US1, true",
        "US1, 0.0.0.0/0, US1, true",
        "US1, 127.0.0.0/31, US1, true",
        "US1, 127.0.0.2, US1, false",
        "US1, 127.0.0.2/31, US1, false",
        "US1, 10.1.2.0/24, US1, false",
        "US1, 126.0.0.0/8, US1, false",
        "US1, ::1, US1, false",
        "US1, ::/0, US1, false",
        "US1, 127.0.0.1, US2, false",
        "US1, 0.0.0.0/0, us1, false",
        "US1, 10.1.2.0/24, US2, false"
    })
    void letsInByTitleAndAddressTogether(String title, String range, String calling, boolean letIn) {
        Callers callers = new Callers(Map.of(title, List.of(AddressRange.of(range))));
        try (Listener listener = listener(callers, Optional.empty())) {
            assertThat(isLetIn(listener, calling, Optional.empty())).isEqualTo(letIn);
        }
    }

    @Test
    void anAddressOfOnePeerIsNoAddressOfAnother() {
        Callers callers = new Callers(
                Map.of("US1", List.of(AddressRange.of("127.0.0.1")), "US2", List.of(AddressRange.of("10.0.0.0/8"))));
        try (Listener listener = listener(callers, Optional.empty())) {
            assertThat(isLetIn(listener, "US1", Optional.empty())).isTrue();
            assertThat(isLetIn(listener, "US2", Optional.empty())).isFalse();
        }
    }

    private static String fingerprint(TestCertificates of) throws Exception {
        try (InputStream in = Files.newInputStream(of.certificate())) {
            byte[] encoded = CertificateFactory.getInstance("X.509")
                    .generateCertificate(in)
                    .getEncoded();
            return HexFormat.ofDelimiter(":")
                    .withUpperCase()
                    .formatHex(MessageDigest.getInstance("SHA-256").digest(encoded));
        }
    }

    @Test
    void aTrustedCertificateOfOnePeerDoesNotServeForAnotherTitle() throws Exception {
        TestCertificates ours = TestCertificates.make(folder, "ours", SELF);
        TestCertificates us1 = TestCertificates.make(folder, "us1", SELF);
        TestCertificates us2 = TestCertificates.make(folder, "us2", SELF);
        Path both = folder.resolve("both.crt");
        Files.writeString(both, Files.readString(us1.certificate()) + Files.readString(us2.certificate()));
        SSLContext door = ours.trusting(new TestCertificates(both, us1.key()));
        List<AddressRange> here = List.of(AddressRange.of(SELF));
        Callers callers = new Callers(
                Map.of("US1", here, "US2", here, "ANY", here),
                Map.of(
                        "US1", List.of(CertificateName.of("CN=us1")),
                        "US2", List.of(CertificateName.of(fingerprint(us1)), CertificateName.of(fingerprint(us2)))));
        try (Listener listener = listener(callers, Optional.of(door))) {
            Optional<SSLContext> first = Optional.of(us1.trusting(ours));
            Optional<SSLContext> second = Optional.of(us2.trusting(ours));
            assertThat(isLetIn(listener, "US1", first)).isTrue();
            assertThat(isLetIn(listener, "US1", second)).isFalse();
            assertThat(isLetIn(listener, "US2", first)).isTrue();
            assertThat(isLetIn(listener, "US2", second)).isTrue();
            assertThat(isLetIn(listener, "ANY", second)).isTrue();
        }
    }

    @Test
    void withoutTlsNobodyShowsACertificate() {
        Callers callers = new Callers(
                Map.of("US1", List.of(AddressRange.of(SELF))), Map.of("US1", List.of(CertificateName.of("CN=us1"))));
        try (Listener listener = listener(callers, Optional.empty())) {
            assertThat(isLetIn(listener, "US1", Optional.empty())).isFalse();
        }
    }

    @Test
    void refusesWhatNamesNoCertificate() {
        for (String text : List.of("", " ", "us1", "CN", "0123")) {
            assertThatIllegalArgumentException().as(text).isThrownBy(() -> CertificateName.of(text));
        }
    }

    @Test
    void oldProtocolsOfTlsAreRefused() throws Exception {
        TestCertificates ours = TestCertificates.make(folder, "ours", SELF);
        SSLContext context = ours.trusting(ours);
        Callers callers = new Callers(Map.of("US1", List.of(AddressRange.of(SELF))));
        try (Listener listener = listener(callers, Optional.of(context));
                var socket =
                        (javax.net.ssl.SSLSocket) context.getSocketFactory().createSocket(SELF, listener.port())) {
            socket.setEnabledProtocols(new String[] {"TLSv1.1"});
            socket.setSoTimeout(10_000);
            assertThat(catchThrowableOfType(java.io.IOException.class, socket::startHandshake))
                    .isNotNull();
        }
    }
}
