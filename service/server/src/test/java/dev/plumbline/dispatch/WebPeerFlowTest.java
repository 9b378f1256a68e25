// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import com.sun.net.httpserver.HttpsConfigurator;
import com.sun.net.httpserver.HttpsParameters;
import com.sun.net.httpserver.HttpsServer;
import dev.plumbline.peer.TestCertificates;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLParameters;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whom our web client speaks with: the configured host, by its certificate, and nobody else. TRUST 2.2 (SSRF), 3.5. */
class WebPeerFlowTest {
    private static final Duration WAIT = Duration.ofSeconds(10);

    @TempDir
    Path folder;

    private static InetSocketAddress anyPort() {
        return new InetSocketAddress(InetAddress.getLoopbackAddress(), 0);
    }

    private static void answer(HttpExchange exchange, int status) throws IOException {
        exchange.getRequestBody().readAllBytes();
        exchange.sendResponseHeaders(status, -1);
        exchange.close();
    }

    @ParameterizedTest
    @ValueSource(ints = {301, 302, 303, 307, 308})
    void followsNoRedirect(int status) throws Exception {
        AtomicInteger hits = new AtomicInteger();
        HttpServer canary = HttpServer.create(anyPort(), 0);
        canary.createContext("/", exchange -> {
            hits.incrementAndGet();
            answer(exchange, 200);
        });
        HttpServer archive = HttpServer.create(anyPort(), 0);
        archive.createContext("/", exchange -> {
            exchange.getResponseHeaders()
                    .set("Location", "http://127.0.0.1:" + canary.getAddress().getPort() + "/studies");
            answer(exchange, status);
        });
        canary.start();
        archive.start();
        try {
            Path token = Files.writeString(folder.resolve("token"), "secret");
            URI base = URI.create("http://127.0.0.1:" + archive.getAddress().getPort() + "/dicom-web");
            WebPeer peer = new WebPeer(new WebPeer.Place(base, Optional.of(token), Optional.empty()), WAIT, WAIT);
            assertThat(peer.send(peer.request("/studies").POST(BodyPublishers.ofString("x")))
                            .statusCode())
                    .isEqualTo(status);
            assertThat(peer.send(peer.request("/studies/1").GET()).statusCode()).isEqualTo(status);
            assertThat(hits).hasValue(0);
        } finally {
            archive.stop(0);
            canary.stop(0);
        }
    }

    /** What a server over TLS demands. */
    private record Demands(boolean clientCertificate, List<String> protocols) {}

    private static HttpsServer server(SSLContext context, Demands demands) throws IOException {
        HttpsServer server = HttpsServer.create(anyPort(), 0);
        server.setHttpsConfigurator(new HttpsConfigurator(context) {
            @Override
            public void configure(HttpsParameters parameters) {
                SSLParameters tls = context.getDefaultSSLParameters();
                tls.setNeedClientAuth(demands.clientCertificate());
                tls.setProtocols(demands.protocols().toArray(String[]::new));
                parameters.setSSLParameters(tls);
            }
        });
        server.createContext("/", exchange -> answer(exchange, 200));
        server.start();
        return server;
    }

    private static int asked(HttpsServer server, String host, SSLContext tls) throws IOException {
        URI base = URI.create("https://" + host + ":" + server.getAddress().getPort() + "/dicom-web");
        WebPeer peer = new WebPeer(new WebPeer.Place(base, Optional.empty(), Optional.of(() -> tls)), WAIT, WAIT);
        return peer.send(peer.request("/studies").GET()).statusCode();
    }

    private static void assertRefused(HttpsServer server, String host, SSLContext tls) {
        assertThat(catchThrowableOfType(WebPeer.Unanswered.class, () -> asked(server, host, tls)))
                .as(host)
                .isNotNull();
    }

    @Test
    void speaksWithACertificateThatItTrustsAndThatIsMadeOutToTheHost() throws Exception {
        TestCertificates ours = TestCertificates.make(folder, "ours", "127.0.0.1");
        TestCertificates theirs = TestCertificates.make(folder, "theirs", "127.0.0.1");
        HttpsServer server = server(theirs.trusting(ours), new Demands(false, List.of("TLSv1.3", "TLSv1.2")));
        try {
            assertThat(asked(server, "127.0.0.1", ours.trusting(theirs))).isEqualTo(200);
            assertRefused(server, "localhost", ours.trusting(theirs));
            assertRefused(server, "127.0.0.1", ours.trusting(ours));
            assertRefused(server, "127.0.0.1", SSLContext.getDefault());
        } finally {
            server.stop(0);
        }
    }

    @Test
    void showsItsOwnCertificate() throws Exception {
        TestCertificates ours = TestCertificates.make(folder, "ours", "127.0.0.1");
        TestCertificates theirs = TestCertificates.make(folder, "theirs", "127.0.0.1");
        TestCertificates other = TestCertificates.make(folder, "other", "127.0.0.1");
        HttpsServer server = server(theirs.trusting(ours), new Demands(true, List.of("TLSv1.3", "TLSv1.2")));
        try {
            assertThat(asked(server, "127.0.0.1", ours.trusting(theirs))).isEqualTo(200);
            assertRefused(server, "127.0.0.1", other.trusting(theirs));
        } finally {
            server.stop(0);
        }
    }

    @Test
    void refusesOldProtocols() throws Exception {
        TestCertificates both = TestCertificates.make(folder, "both", "127.0.0.1");
        HttpsServer server = server(both.trusting(both), new Demands(false, List.of("TLSv1.1", "TLSv1")));
        try {
            assertRefused(server, "127.0.0.1", both.trusting(both));
        } finally {
            server.stop(0);
        }
    }
}
