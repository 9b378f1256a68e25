// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.archive.Dispatch.State;
import dev.plumbline.config.ProofBy;
import dev.plumbline.dimse.AddressRange;
import dev.plumbline.dimse.Callers;
import dev.plumbline.dimse.Listener;
import dev.plumbline.dimse.Peer;
import dev.plumbline.dimse.Requestor;
import dev.plumbline.dimse.Timeouts;
import dev.plumbline.peer.OrthancPeer;
import dev.plumbline.peer.PeerProcess;
import dev.plumbline.peer.QueryRetrievePeer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** To archives that are not ours, and proved to be there. */
class RealArchivesFlowTest {
    private static final Requestor WE = new Requestor("PLUMBLINE", Timeouts.USUAL);

    @TempDir
    Path folder;

    private static Courier courier(FiledRecords records, Destination destination) {
        return new Courier(destination, records.archive, records.times());
    }

    /** Rounds, with all rests over at once, until nothing is queued or sent any more. */
    private static void carry(FiledRecords records, Courier courier) {
        for (int i = 0; i < 20 && unproved(records) > 0; i++) {
            records.nanoTime.addAndGet(Backoff.LONGEST.toNanos() * 2);
            courier.round();
        }
        courier.rest();
    }

    private static int unproved(FiledRecords records) {
        return records.count(State.QUEUED) + records.count(State.SENT);
    }

    @Test
    void provesByReadingBackFromDcmqrscpThatWasDownAtFirst() throws Exception {
        int port = PeerProcess.freePort();
        Peer peer = new Peer(QueryRetrievePeer.AE_TITLE, "127.0.0.1", port, Optional.empty());
        try (FiledRecords records = new FiledRecords(folder.resolve("data"))) {
            for (int study = 1; study <= 20; study++) {
                records.file(study);
            }
            Courier courier =
                    courier(records, Destinations.dicom(FiledRecords.TO, records.archive, WE, peer, ProofBy.GET));
            Duration wait = courier.round();
            assertThat(wait).isEqualTo(Backoff.FIRST);
            assertThat(records.dispatch().lastAnswer().words()).startsWith("Nothing listens");
            assertThat(records.store()
                            .dispatches()
                            .get(2)
                            .orElseThrow()
                            .progress()
                            .attempts())
                    .as("one probe for all")
                    .isZero();
            try (QueryRetrievePeer archive = QueryRetrievePeer.start(folder, port)) {
                carry(records, courier);
                assertThat(records.store().dispatches().waiting(FiledRecords.TO, State.PROVED))
                        .hasSize(20);
                try (Stream<Path> stored = Files.list(archive.store())) {
                    assertThat(stored.filter(
                                    file -> !file.getFileName().toString().startsWith("index")))
                            .hasSize(40);
                }
            }
        }
    }

    @Test
    void provesByWadoWhatStowSentToOrthanc() throws Exception {
        try (FiledRecords records = new FiledRecords(folder.resolve("data"));
                OrthancPeer orthanc = OrthancPeer.start(folder, PeerProcess.freePort())) {
            records.file(1);
            records.file(2);
            WebPeer web = new WebPeer(
                    new WebPeer.Place(
                            URI.create("http://127.0.0.1:" + orthanc.httpPort() + "/dicom-web"),
                            Optional.empty(),
                            Optional.empty()),
                    Duration.ofSeconds(10),
                    Duration.ofSeconds(60));
            carry(
                    records,
                    courier(records, Destinations.web(FiledRecords.TO, records.archive, web, FiledRecords.CLOCK)));
            assertThat(records.store().dispatches().waiting(FiledRecords.TO, State.PROVED))
                    .as(records.dispatch().toString())
                    .hasSize(2);
        }
    }

    @Test
    void provesByTheCommitmentThatOrthancReports() throws Exception {
        try (FiledRecords records = new FiledRecords(folder.resolve("data"));
                Listener listener = listener(records);
                OrthancPeer orthanc = OrthancPeer.start(folder, listener.port())) {
            records.file(1);
            Peer peer = new Peer(OrthancPeer.AE_TITLE, "127.0.0.1", orthanc.dicomPort(), Optional.empty());
            Courier courier = courier(
                    records, Destinations.dicom(FiledRecords.TO, records.archive, WE, peer, ProofBy.COMMITMENT));
            for (int i = 0; i < 1200 && unproved(records) > 0; i++) {
                records.nanoTime.addAndGet(Duration.ofSeconds(2).toNanos());
                courier.round();
                Thread.sleep(50);
            }
            courier.rest();
            assertThat(records.dispatch().state())
                    .as(records.dispatch().toString())
                    .isEqualTo(State.PROVED);
            assertThat(records.dispatch().lastAnswer().words()).isEqualTo("The archive committed to it.");
        }
    }

    @Test
    void readsBackFromDcmqrscpWhichKnowsNoCommitment() throws Exception {
        try (FiledRecords records = new FiledRecords(folder.resolve("data"));
                QueryRetrievePeer archive = QueryRetrievePeer.start(folder)) {
            records.file(1);
            Peer peer = new Peer(QueryRetrievePeer.AE_TITLE, "127.0.0.1", archive.port(), Optional.empty());
            Courier courier = courier(
                    records, Destinations.dicom(FiledRecords.TO, records.archive, WE, peer, ProofBy.COMMITMENT));
            courier.round();
            courier.rest();
            assertThat(records.dispatch().state()).isEqualTo(State.PROVED);
            assertThat(records.dispatch().lastAnswer().words()).isEqualTo("Read back and equal.");
        }
    }

    private static Listener listener(FiledRecords records) throws IOException {
        return Listener.start(
                new Listener.Settings(
                        "PLUMBLINE",
                        new InetSocketAddress(InetAddress.getLoopbackAddress(), 0),
                        Optional.empty(),
                        new Callers(Map.of(OrthancPeer.AE_TITLE, List.of(AddressRange.of("127.0.0.1")))),
                        Listener.Limits.USUAL,
                        Timeouts.USUAL),
                new Inbox(records.archive, FiledRecords.CLOCK));
    }
}
