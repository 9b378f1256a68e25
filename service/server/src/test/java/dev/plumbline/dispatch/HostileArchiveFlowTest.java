// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import dev.plumbline.archive.Dispatch.State;
import dev.plumbline.archive.HostileUids;
import dev.plumbline.archive.InventedObjects;
import dev.plumbline.config.ProofBy;
import dev.plumbline.dicom.DataSet;
import dev.plumbline.dicom.DicomFile;
import dev.plumbline.dicom.Tag;
import dev.plumbline.dimse.HostileGetArchive;
import dev.plumbline.dimse.Requestor;
import dev.plumbline.dimse.Timeouts;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What comes back from an archive is as foreign as what anybody sends: nothing is written by its names, nothing proved. */
class HostileArchiveFlowTest {
    private static final String UID = InventedObjects.instanceUid(1, 1, 1);
    private static final Timeouts QUICK =
            new Timeouts(Duration.ofMillis(200), Duration.ofSeconds(5), Duration.ofSeconds(5), Duration.ofSeconds(5));
    private static final int FIRST_OF_META = 132;
    private static final int GROUP_LENGTH_BYTES = 12;

    @TempDir
    Path root;

    private static byte[] dataSet(DataSet object) {
        byte[] file = DicomFile.encode(object);
        int meta = ByteBuffer.wrap(file).order(ByteOrder.LITTLE_ENDIAN).getInt(FIRST_OF_META + 8);
        return Arrays.copyOfRange(file, FIRST_OF_META + GROUP_LENGTH_BYTES + meta, file.length);
    }

    /** One round of sending and looking, with an archive that is hostile. */
    private interface Round {
        Destination with(FiledRecords records);
    }

    private void assertNothingProved(String name, Round round) throws IOException {
        Path data = Files.createDirectories(root.resolve(name + "/deep/er/data"));
        try (FiledRecords records = new FiledRecords(data)) {
            records.file(1);
            Courier courier = new Courier(round.with(records), records.archive, records.times());
            courier.round();
            courier.rest();
            assertThat(records.dispatch().state()).as(name).isNotEqualTo(State.PROVED);
        }
        assertThat(data.resolve("incoming")).isEmptyDirectory();
        assertThat(files(data.resolve("objects")))
                .as("the two objects of the record")
                .hasSize(2);
        assertThat(files(root)).allSatisfy(file -> assertThat(file.toString()).contains("/deep/er/data/"));
    }

    private static List<Path> files(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(Files::isRegularFile).toList();
        }
    }

    private void givenBackByGet(String name, String uid, DataSet object) throws IOException {
        HostileGetArchive.Given given = new HostileGetArchive.Given(InventedObjects.ULTRASOUND, uid, dataSet(object));
        try (HostileGetArchive archive = new HostileGetArchive(given)) {
            Requestor requestor = new Requestor("PLUMBLINE", QUICK);
            assertNothingProved(
                    name,
                    records -> Destinations.dicom(
                            FiledRecords.TO, records.archive, requestor, archive.peer(), ProofBy.GET));
            assertThat(archive.handedBack()).isPositive();
        }
    }

    @Test
    void provesAndWritesNothingThatACGetHandsBackUnderAHostileUid() throws Exception {
        List<String> uids = HostileUids.all();
        for (int i = 0; i < uids.size(); i++) {
            DataSet object = InventedObjects.image(1, 1, 1).put(Tag.SOP_INSTANCE_UID, uids.get(i));
            givenBackByGet("get" + i, i % 2 == 0 ? uids.get(i) : UID, object);
        }
    }

    @Test
    void provesNothingByAnObjectOfSomebodyElse() throws Exception {
        DataSet other = InventedObjects.image(1, 1, 1).put(Tag.PATIENT_NAME, "Other^Person");
        givenBackByGet("other", UID, other);
        givenBackByGet("unasked", InventedObjects.instanceUid(9, 9, 9), InventedObjects.image(9, 9, 9));
    }

    /** What a hostile web archive answers to a request for an instance. */
    private record WebAnswer(String contentType, byte[] body) {}

    private static byte[] part(String headers, byte[] body) {
        ByteArrayOutputStream whole = new ByteArrayOutputStream();
        whole.writeBytes(("--b\r\n" + headers + "\r\n\r\n").getBytes(StandardCharsets.UTF_8));
        whole.writeBytes(body);
        whole.writeBytes("\r\n--b--\r\n".getBytes(StandardCharsets.US_ASCII));
        return whole.toByteArray();
    }

    private static List<WebAnswer> webAnswers() {
        byte[] other = InventedObjects.imageFile(9, 9, 9);
        byte[] hostile = DicomFile.encode(InventedObjects.image(1, 1, 1).put(Tag.SOP_INSTANCE_UID, "../../../escape"));
        String related = "multipart/related; type=\"application/dicom\"; boundary=b";
        byte[] doctype = "<!DOCTYPE x [<!ENTITY e SYSTEM \"file:///etc/passwd\">]><x>&e;</x>"
                .getBytes(StandardCharsets.US_ASCII);
        return List.of(
                new WebAnswer(
                        related, part("Content-Type: application/dicom\r\nContent-Location: ../../../escape", other)),
                new WebAnswer(
                        related, part("Content-Disposition: attachment; filename=\"../../../../escape.dcm\"", hostile)),
                new WebAnswer(related, part("X: " + "y".repeat(100_000), other)),
                new WebAnswer(related, Arrays.copyOf(part("", other), 300)),
                new WebAnswer("multipart/related; boundary=", other),
                new WebAnswer("multipart/related; boundary=\"" + "z".repeat(10_000) + "\"", other),
                new WebAnswer("application/dicom", hostile),
                new WebAnswer("application/dicom", new byte[0]),
                new WebAnswer("application/dicom+xml", doctype),
                new WebAnswer("application/zip", "PK\u0003\u0004../../escape".getBytes(StandardCharsets.US_ASCII)));
    }

    private static void answer(HttpExchange exchange, WebAnswer retrieved) throws IOException {
        exchange.getRequestBody().readAllBytes();
        boolean stored = exchange.getRequestMethod().equals("POST");
        String item = "{\"00081155\":{\"vr\":\"UI\",\"Value\":[\"%s\"]}}";
        String taken = "{\"00081199\":{\"vr\":\"SQ\",\"Value\":[" + String.format(item, UID) + ","
                + String.format(item, InventedObjects.instanceUid(1, 2, 2)) + "]}}";
        byte[] body = stored ? taken.getBytes(StandardCharsets.US_ASCII) : retrieved.body();
        exchange.getResponseHeaders().set("Content-Type", stored ? "application/dicom+json" : retrieved.contentType());
        exchange.sendResponseHeaders(200, body.length == 0 ? -1 : body.length);
        exchange.getResponseBody().write(body);
        exchange.close();
    }

    @Test
    void provesAndWritesNothingOfWhatAHostileWebArchiveHandsBack() throws Exception {
        List<WebAnswer> answers = webAnswers();
        for (int i = 0; i < answers.size(); i++) {
            WebAnswer retrieved = answers.get(i);
            HttpServer server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
            AtomicInteger asked = new AtomicInteger();
            server.createContext("/", exchange -> {
                asked.addAndGet(exchange.getRequestMethod().equals("GET") ? 1 : 0);
                answer(exchange, retrieved);
            });
            server.start();
            try {
                URI base = URI.create("http://127.0.0.1:" + server.getAddress().getPort() + "/dicom-web");
                WebPeer.Place place = new WebPeer.Place(base, Optional.empty(), Optional.empty());
                WebPeer peer = new WebPeer(place, QUICK.connect(), QUICK.response());
                assertNothingProved(
                        "web" + i,
                        records -> Destinations.web(FiledRecords.TO, records.archive, peer, FiledRecords.CLOCK));
                assertThat(asked).hasPositiveValue();
            } finally {
                server.stop(0);
            }
        }
    }
}
