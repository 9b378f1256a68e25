// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import static dev.plumbline.archive.InventedObjects.image;
import static dev.plumbline.archive.InventedObjects.imageFile;
import static dev.plumbline.archive.InventedObjects.instanceUid;
import static dev.plumbline.archive.InventedObjects.seriesUid;
import static dev.plumbline.archive.InventedObjects.studyUid;
import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.archive.HostileUids;
import dev.plumbline.dicom.DicomFile;
import dev.plumbline.dicom.Tag;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URLEncoder;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a hostile sender may try: nothing is kept, nothing is written elsewhere, no answer shows our inside. */
class DicomWebHostileFlowTest {
    @TempDir
    Path root;

    private ArchiveServer server;

    @BeforeEach
    void start() throws IOException {
        Files.createDirectories(root.resolve("deep/er/data"));
        server = new ArchiveServer(root.resolve("deep/er/data"));
    }

    @AfterEach
    void stop() throws IOException {
        server.close();
    }

    @Test
    void keepsNoObjectWithAHostileUid() throws IOException {
        for (String uid : HostileUids.all()) {
            for (int tag : List.of(Tag.SOP_INSTANCE_UID, Tag.STUDY_INSTANCE_UID, Tag.SERIES_INSTANCE_UID)) {
                HttpResponse<byte[]> answer =
                        server.stow(DicomFile.encode(image(1, 1, 1).put(tag, uid)));
                assertThat(answer.statusCode()).as(uid).isEqualTo(409);
                requireSilence(answer);
            }
            assertNothingKept();
        }
    }

    @Test
    void findsNothingUnderAHostileUid() throws IOException {
        for (String uid : HostileUids.all()) {
            requireNothingUnder(uid);
        }
        assertNothingKept();
    }

    private void requireNothingUnder(String uid) {
        String segment = URLEncoder.encode(uid, StandardCharsets.UTF_8).replace("+", "%20");
        List<String> paths = List.of(
                "/studies/" + segment,
                "/studies/" + segment + "/metadata",
                "/studies/" + segment + "/series",
                "/studies/1.2/series/" + segment,
                "/studies/1.2/series/" + segment + "/instances",
                "/studies/1.2/series/1.3/instances/" + segment,
                "/studies/1.2/series/1.3/instances/" + segment + "/rendered",
                "/studies/1.2/series/1.3/instances/" + segment + "/frames/1",
                "/studies?StudyInstanceUID=" + segment);
        for (String path : paths) {
            HttpResponse<byte[]> answer = server.get(path, "*/*");
            assertThat(answer.statusCode()).as(path).isBetween(400, 404);
            requireSilence(answer);
        }
        assertThat(server.post("/studies/" + segment, "application/dicom", imageFile(1, 1, 1))
                        .statusCode())
                .as(uid)
                .isBetween(400, 404);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/dicomweb/../../../etc/passwd",
                "/dicomweb/studies/..%2f..%2fstore.sqlite",
                "/dicomweb/studies/%2e%2e/%2e%2e/etc/passwd",
                "/dicomweb/studies/1.2/..;/..;/x",
                "/dicomweb//studies//1.2",
                "/dicomweb/studies/%c0%ae%c0%ae/x",
                "/dicomweb/studies/1.2%00.dcm",
                "/dicomweb/studies/1.2/series/1.3/instances/1.4/bulkdata/..%5c..%5cx",
                "/dicomweb/studies/1.2/series/1.3/instances/1.4/bulkdata/file:%2f%2f%2fetc%2fpasswd",
                "/dicomweb/studies/1.2/series/1.3/instances/1.4/frames/../../../x"
            })
    void answersPathTricksWithoutReadingAnything(String path) throws IOException {
        List<String> answer =
                raw("GET " + path + " HTTP/1.1\r\nHost: localhost\r\nAccept: */*\r\n" + "Connection: close\r\n\r\n");
        assertThat(answer.get(0)).matches("HTTP/1\\.1 4(00|04|05) .*");
        assertThat(String.join("\n", answer)).doesNotContain("root:").doesNotContain("SQLite format");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "PatientName=' OR 1=1 --",
                "PatientID=\"; DROP TABLE objects; --",
                "PatientName=%*[",
                "StudyDate=20260101' OR '1'='1",
                "limit=1; DELETE FROM objects",
                "00100010); DROP TABLE objects; --=x",
                "includefield=00100010; DROP TABLE objects"
            })
    void bindsWhatAQuerySays(String query) throws IOException {
        server.stow(imageFile(1, 1, 1));
        String encoded = Arrays.stream(query.split("=", 2))
                .map(side -> URLEncoder.encode(side, StandardCharsets.UTF_8))
                .collect(Collectors.joining("="));
        HttpResponse<byte[]> answer = server.json("/studies?" + encoded);
        assertThat(answer.statusCode())
                .isIn(200, 204, 400); // a parameter that is none is ignored, which a warning says
        requireSilence(answer);
        assertThat(answer.headers().allValues("Warning"))
                .allSatisfy(warning -> assertThat(warning).doesNotContain("DROP"));
        assertThat(server.json("/studies").statusCode()).isEqualTo(200);
    }

    @Test
    void bearsAnExpensivePattern() {
        server.stow(imageFile(1, 1, 1));
        String pattern = "*a".repeat(500) + "*";
        assertThat(server.json("/studies?PatientName=" + pattern).statusCode()).isEqualTo(204);
        assertThat(server.json("/studies?PatientName=" + "x".repeat(2000)).statusCode())
                .isEqualTo(400);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"MZ", "\u007fELF", "PK\u0003\u0004", "<script>alert(1)</script>", "#!/bin/sh\n", "%PDF-1.7"})
    void neverGivesAProgramBackInThePreamble(String start) throws IOException {
        byte[] object = imageFile(1, 1, 1);
        byte[] program = start.getBytes(StandardCharsets.ISO_8859_1);
        System.arraycopy(program, 0, object, 0, program.length);
        assertThat(server.stow(object).statusCode()).isEqualTo(200);
        byte[] back = server.get(
                        "/studies/" + studyUid(1) + "/series/" + seriesUid(1, 1) + "/instances/" + instanceUid(1, 1, 1),
                        "application/dicom")
                .body();
        assertThat(Arrays.copyOf(back, 128)).containsOnly(0);
        assertThat(back).isEqualTo(imageFile(1, 1, 1));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"PK\u0003\u0004", "Rar!", "7z\u00bc\u00af'\u001c", "<?xml version=\"1.0\"?><!DOCTYPE x>", "{}"})
    void keepsNothingThatIsNoDicomFile(String start) throws IOException {
        byte[] body = Arrays.copyOf(start.getBytes(StandardCharsets.ISO_8859_1), 4000);
        assertThat(server.stow(body).statusCode()).isEqualTo(409);
        assertThat(server.post("/studies", "application/dicom", body).statusCode())
                .isEqualTo(409);
        assertNothingKept();
    }

    @Test
    void keepsOneOfTwentySentAtOnce() throws Exception {
        List<Integer> statuses =
                atOnce(20, () -> server.stow(imageFile(1, 1, 1)).statusCode());
        assertThat(statuses).containsOnly(200);
        assertThat(filesUnder("objects")).hasSize(1);
        assertThat(server.archive.store().objects()).hasSize(1);
    }

    @Test
    void keepsTheFirstOfObjectsThatClaimOneUid() throws Exception {
        List<Callable<Integer>> senders = new ArrayList<>();
        for (int i = 0; i < 20; i++) {
            byte[] object = DicomFile.encode(image(1, 1, 1).put(Tag.PATIENT_NAME, "Impostor^Number " + i));
            senders.add(() -> server.stow(object).statusCode());
        }
        List<Integer> statuses = atOnce(senders);
        assertThat(statuses.stream().filter(status -> status == 200)).hasSize(1);
        assertThat(statuses.stream().filter(status -> status == 409)).hasSize(19);
        assertThat(filesUnder("objects")).hasSize(1);
        assertThat(filesUnder("quarantine")).hasSize(19);
    }

    @Test
    void leavesNothingWhenTheSenderHangsUp() throws Exception {
        byte[] body = ArchiveServer.parts(List.of(imageFile(1, 1, 1)));
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), server.port())) {
            socket.getOutputStream()
                    .write(ArchiveServer.ascii("POST /dicomweb/studies HTTP/1.1\r\nHost: localhost\r\nContent-Type: "
                            + ArchiveServer.DICOM_PARTS + "\r\nContent-Length: " + body.length + "\r\n\r\n"));
            socket.getOutputStream().write(body, 0, body.length - 200);
            socket.getOutputStream().flush();
        }
        server.close();
        assertNothingKept();
        server = new ArchiveServer(root.resolve("deep/er/data"));
    }

    private static void requireSilence(HttpResponse<byte[]> answer) {
        assertThat(new String(answer.body(), StandardCharsets.UTF_8))
                .doesNotContain("dev.plumbline")
                .doesNotContain("Exception")
                .doesNotContain("root:")
                .doesNotContain("/deep/er");
    }

    private void assertNothingKept() throws IOException {
        assertThat(filesUnder("incoming")).isEmpty();
        assertThat(filesUnder("objects")).isEmpty();
        assertThat(filesUnder("quarantine")).isEmpty();
        try (Stream<Path> all = Files.walk(root)) {
            assertThat(all.filter(Files::isRegularFile).filter(file -> !file.startsWith(server.data)))
                    .isEmpty();
        }
    }

    private List<Path> filesUnder(String name) throws IOException {
        try (Stream<Path> all = Files.walk(server.data.resolve(name))) {
            return all.filter(Files::isRegularFile).toList();
        }
    }

    private List<String> raw(String request) throws IOException {
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), server.port())) {
            socket.setSoTimeout(10_000);
            socket.getOutputStream().write(ArchiveServer.ascii(request));
            socket.getOutputStream().flush();
            return new BufferedReader(new InputStreamReader(socket.getInputStream(), StandardCharsets.ISO_8859_1))
                    .lines()
                    .toList();
        }
    }

    private static <T> List<T> atOnce(int times, Callable<T> task) throws Exception {
        return atOnce(Stream.generate(() -> task).limit(times).toList());
    }

    private static <T> List<T> atOnce(List<Callable<T>> tasks) throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(tasks.size());
        try {
            List<T> results = new ArrayList<>();
            for (Future<T> result : threads.invokeAll(tasks)) {
                results.add(result.get());
            }
            return results;
        } finally {
            threads.shutdownNow();
        }
    }
}
