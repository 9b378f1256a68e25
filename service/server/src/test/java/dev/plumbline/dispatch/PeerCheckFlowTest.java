// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.net.httpserver.HttpServer;
import dev.plumbline.config.ServiceConfig;
import dev.plumbline.dispatch.PeerCheck.Step;
import dev.plumbline.peer.PeerProcess;
import dev.plumbline.peer.TestCertificates;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Plausible mistakes in what is stated of a peer, and whether the words say which one it is. */
class PeerCheckFlowTest {
    private static final String ARCHIVE = "{\"name\":\"pacs\",\"aeTitle\":\"PACS\",\"host\":\"127.0.0.1\",\"port\":%d,"
            + "\"uses\":[\"archive\"],\"proof\":\"none\"%s}";

    @TempDir
    Path folder;

    private List<Step> wrong(String... peers) throws IOException {
        Path file = Files.writeString(
                folder.resolve("plumbline.json"),
                "{\"schema\":\"plumbline-service/1\",\"dicom\":{\"responseSeconds\":5},\"peers\":["
                        + String.join(",", peers) + "]}");
        return new PeerCheck(ServiceConfig.read(file).network(), Clock.systemUTC())
                .run().stream().filter(step -> !step.ok()).toList();
    }

    private static String tls(String ours, String trust) {
        return ",\"tls\":{\"certificate\":\"" + ours + ".crt\",\"key\":\"" + ours + ".key\",\"trust\":\"" + trust
                + ".crt\"}";
    }

    private PeerProcess storescp(String... more) throws IOException {
        int port = PeerProcess.freePort();
        List<String> command = new ArrayList<>(List.of("storescp", "-aet", "PACS", "-od", folder.toString()));
        command.addAll(List.of(more));
        command.add(Integer.toString(port));
        return PeerProcess.start(folder, port, command);
    }

    @Test
    void aPortOfAnotherKindOfServiceIsSaidToBeOne() throws Exception {
        HttpServer web = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        web.start();
        try {
            assertThat(wrong(ARCHIVE.formatted(web.getAddress().getPort(), "")))
                    .singleElement()
                    .extracting(Step::words)
                    .asString()
                    .contains("Perhaps another kind of service");
        } finally {
            web.stop(0);
        }
    }

    @Test
    void aWrongPathAndAWrongSchemeOfAWebPeerAreSaid() throws Exception {
        HttpServer web = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        web.start();
        try {
            String url = "{\"name\":\"cloud\",\"url\":\"%s://127.0.0.1:"
                    + web.getAddress().getPort() + "/nothing\",\"uses\":[\"archive\"]}";
            assertThat(wrong(url.formatted("http")))
                    .extracting(Step::words)
                    .anyMatch(words -> words.endsWith("Check the path in \"url\"."));
            assertThat(wrong(url.formatted("https")))
                    .extracting(Step::words)
                    .anyMatch(words -> words.endsWith("Check port and scheme (http or https) of \"url\"."));
        } finally {
            web.stop(0);
        }
    }

    @Test
    void aPeerThatOffersNoWorklistIsSaidToOfferNone() throws Exception {
        try (PeerProcess archive = storescp()) {
            assertThat(wrong("{\"name\":\"ris\",\"aeTitle\":\"PACS\",\"host\":\"127.0.0.1\",\"port\":" + archive.port()
                            + ",\"uses\":[\"worklist\"]}"))
                    .singleElement()
                    .extracting(Step::words)
                    .isEqualTo("It offers no modality worklist. Check port, AE title and \"uses\".");
        }
    }

    @Test
    void oneWhoseFilesAreMissingDoesNotKeepTheOthersFromBeingTried() throws Exception {
        try (PeerProcess archive = storescp()) {
            assertThat(wrong(
                            ARCHIVE.formatted(archive.port(), tls("absent", "absent"))
                                    .replace("pacs", "other"),
                            ARCHIVE.formatted(PeerProcess.freePort(), "")))
                    .satisfiesExactly(
                            broken -> {
                                assertThat(broken.peer()).isEqualTo("other");
                                assertThat(broken.words()).contains("There is no file", "absent.crt");
                            },
                            tried -> {
                                assertThat(tried.peer()).isEqualTo("pacs");
                                assertThat(tried.words()).contains("Nothing answers");
                            });
        }
    }

    @Test
    void whatFailsOverTlsIsToldApart() throws Exception {
        TestCertificates ours = TestCertificates.make(folder, "ours", "127.0.0.1");
        TestCertificates theirs = TestCertificates.make(folder, "theirs", "127.0.0.1");
        TestCertificates elsewhere = TestCertificates.make(folder, "elsewhere", "pacs.example.org");
        TestCertificates.make(folder, "stranger", "127.0.0.1");
        try (PeerProcess secure = storescp(
                        "+tls",
                        theirs.key().toString(),
                        theirs.certificate().toString(),
                        "+cf",
                        ours.certificate().toString());
                PeerProcess other = storescp(
                        "+tls",
                        elsewhere.key().toString(),
                        elsewhere.certificate().toString(),
                        "+cf",
                        ours.certificate().toString());
                PeerProcess plain = storescp()) {
            assertSaid(secure.port(), tls("ours", "stranger"), "its certificate leads to none that is trusted here");
            assertSaid(other.port(), tls("ours", "elsewhere"), "its certificate is not made out to the host");
            assertSaid(secure.port(), tls("stranger", "theirs"), "Perhaps it does not accept our certificate");
            assertSaid(secure.port(), "", "Perhaps it speaks TLS at this port");
            assertSaid(plain.port(), tls("ours", "theirs"), "TLS");
            assertThat(wrong(ARCHIVE.formatted(secure.port(), tls("ours", "theirs"))))
                    .isEmpty();
        }
    }

    private void assertSaid(int port, String tls, String words) throws IOException {
        assertThat(wrong(ARCHIVE.formatted(port, tls)))
                .singleElement()
                .extracting(Step::words)
                .asString()
                .contains(words);
    }
}
