// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import com.sun.net.httpserver.HttpsConfigurator;
import com.sun.net.httpserver.HttpsParameters;
import com.sun.net.httpserver.HttpsServer;
import dev.plumbline.config.Network;
import dev.plumbline.config.ServiceConfig;
import dev.plumbline.config.SitePeer;
import dev.plumbline.dimse.Association;
import dev.plumbline.dimse.Listener;
import dev.plumbline.dimse.Peer;
import dev.plumbline.dimse.PeerFailure;
import dev.plumbline.dimse.Requestor;
import dev.plumbline.dimse.SopClass;
import dev.plumbline.dimse.Timeouts;
import dev.plumbline.dimse.Wanted;
import dev.plumbline.peer.TestCertificates;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLParameters;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Certificates that are renewed while the service runs: at the door, towards a peer, and towards a DICOMweb peer. */
class RenewedCertificateFlowTest {
    private static final String HOST = "127.0.0.1";
    private static final List<Wanted> ECHO = List.of(Wanted.use(SopClass.VERIFICATION, SopClass.PLAIN_SYNTAXES));

    @TempDir
    Path folder;

    private TestCertificates ours;
    private TestCertificates renewed;
    private TestCertificates theirs;

    @BeforeEach
    void make() throws IOException {
        ours = TestCertificates.make(folder, "ours", HOST);
        renewed = TestCertificates.make(folder, "renewed", HOST);
        theirs = TestCertificates.make(folder, "theirs", HOST);
    }

    private Network network(String url) throws IOException {
        Path file = Files.writeString(folder.resolve("plumbline.json"), """
                { "schema": "plumbline-service/1",
                  "dicom": { "port": 0, "tls": { "certificate": "ours.crt", "key": "ours.key", "trust": "theirs.crt" } },
                  "peers": [
                    { "name": "us1", "aeTitle": "US1", "addresses": ["127.0.0.1"] },
                    { "name": "web", "url": "%s",
                      "tls": { "certificate": "ours.crt", "key": "ours.key", "trust": "theirs.crt" } } ] }
                """.formatted(url));
        return ServiceConfig.read(file).network();
    }

    private void renew() throws IOException {
        Files.copy(renewed.certificate(), ours.certificate(), StandardCopyOption.REPLACE_EXISTING);
        Files.copy(renewed.key(), ours.key(), StandardCopyOption.REPLACE_EXISTING);
    }

    private static Listener door(Network network, SitePeers peers) {
        return Listener.start(
                new Listener.Settings(
                        "PLUMBLINE",
                        new InetSocketAddress(InetAddress.getLoopbackAddress(), 0),
                        network.door().orElseThrow().tls().map(files -> peers.tls("the DICOM door", files)),
                        peers.callers(),
                        Listener.Limits.USUAL,
                        Timeouts.USUAL),
                new DeafServices());
    }

    private static Optional<PeerFailure.Kind> refusal(Listener door, SSLContext caller) {
        Peer peer = new Peer("PLUMBLINE", HOST, door.port(), Optional.of(() -> caller));
        try (Association association = new Requestor("US1", Timeouts.USUAL).open(peer, ECHO)) {
            return association.isOpen() ? Optional.empty() : Optional.of(PeerFailure.Kind.ABORTED);
        } catch (PeerFailure e) {
            return Optional.of(e.kind());
        }
    }

    @Test
    void theDoorShowsTheRenewedOneToWhoeverComesNextAndKeepsItWhereFilesAreBroken() throws Exception {
        Network network = network("https://127.0.0.1:1/");
        SitePeers peers = new SitePeers(network, Clock.systemUTC());
        SSLContext trustingOld = theirs.trusting(
                new TestCertificates(Files.copy(ours.certificate(), folder.resolve("old.crt")), ours.key()));
        SSLContext trustingNew = theirs.trusting(renewed);
        try (Listener door = door(network, peers)) {
            assertThat(refusal(door, trustingOld)).isEmpty();
            assertThat(refusal(door, trustingNew)).contains(PeerFailure.Kind.TLS);
            renew();
            assertThat(refusal(door, trustingNew)).isEmpty();
            assertThat(refusal(door, trustingOld)).contains(PeerFailure.Kind.TLS);
            assertThat(peers.web(network.peers().get(1))).isPresent(); // shows the same files
            Files.writeString(ours.certificate(), "broken");
            assertThat(refusal(door, trustingNew)).isEmpty();
            assertThat(peers.brokenTls())
                    .hasSize(2)
                    .anySatisfy(words -> assertThat(words)
                            .contains("The TLS files of the DICOM door were changed and cannot be used"))
                    .anySatisfy(words -> assertThat(words).contains("The TLS files of web"));
        }
    }

    @Test
    void aPeerOnTheWebIsShownTheRenewedOneWithTheNextRequest() throws Exception {
        HttpsServer server = HttpsServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        SSLContext trustingNew = theirs.trusting(renewed);
        server.setHttpsConfigurator(new HttpsConfigurator(trustingNew) {
            @Override
            public void configure(HttpsParameters parameters) {
                SSLParameters tls = getSSLContext().getDefaultSSLParameters();
                tls.setNeedClientAuth(true);
                parameters.setSSLParameters(tls);
            }
        });
        server.createContext("/", exchange -> {
            exchange.sendResponseHeaders(204, -1);
            exchange.close();
        });
        server.start();
        try {
            Network network = network("https://127.0.0.1:" + server.getAddress().getPort() + "/");
            SitePeers peers = new SitePeers(network, Clock.systemUTC());
            SitePeer site = network.peers().get(1);
            WebPeer web = peers.web(site).orElseThrow();
            assertThat(catchThrowableOfType(
                            WebPeer.Unanswered.class,
                            () -> web.send(web.request("/studies").GET())))
                    .isNotNull();
            renew();
            assertThat(web.send(web.request("/studies").GET()).statusCode()).isEqualTo(204);
        } finally {
            server.stop(0);
        }
    }
}
