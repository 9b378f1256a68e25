// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.app;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.plumbline.archive.DataFolder;
import dev.plumbline.archive.Inspection;
import dev.plumbline.archive.InventedObjects;
import dev.plumbline.archive.LowWater;
import dev.plumbline.archive.SmallDisk;
import dev.plumbline.archive.SqliteStore;
import dev.plumbline.archive.StoreDamaged;
import dev.plumbline.config.ServiceConfig;
import dev.plumbline.dicom.SampleObjects;
import dev.plumbline.dimse.Association;
import dev.plumbline.dimse.Peer;
import dev.plumbline.dimse.Reply;
import dev.plumbline.dimse.Requestor;
import dev.plumbline.dimse.ServiceUser;
import dev.plumbline.dimse.Timeouts;
import dev.plumbline.dimse.Wanted;
import dev.plumbline.samples.SampleSet;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * What senders hear at every door when the disk is full, and that everything goes on when there is room again: with the disk
 * really full, and with the reserve that a site's service keeps. TRUST T5.
 */
@Timeout(180)
class FullDiskFlowTest {
    @TempDir
    Path folder;

    @Test
    void everyDoorSaysSoWhenNothingMoreCanBeWritten() throws Exception {
        assertThat(SmallDisk.run(folder, 40, AtTheDoors.class, "0"))
                .containsExactly(
                        "room: record 201, C-STORE 0000, STOW 200, frame 201",
                        "full: C-STORE A700 The disk of the data folder is too full to keep anything more.",
                        "full: frame 507 no-room",
                        "full: STOW 507 A700",
                        "full: record 507 no-room, ready 200",
                        "full: case 507 no-room",
                        "full: what is held is read: 200 200 200",
                        "full: nothing else is on disk",
                        "room: refused before: record 201, C-STORE 0000, STOW 200, frame 201, case 201, ready 200",
                        "whole");
    }

    /** 24 MB above the 2 GiB that stay free; on a tmpfs what is not written takes no memory. */
    @Test
    void theReserveIsKeptButWhatIsSaidAtTheBedsideIsStillTaken() throws Exception {
        assertThat(SmallDisk.run(folder, 2048 + 24, AtTheDoors.class, Long.toString(LowWater.USUAL.bytes())))
                .containsExactly(
                        "room: record 201, C-STORE 0000, STOW 200, frame 201",
                        "full: C-STORE A700 The disk of the data folder is too full to keep anything more.",
                        "full: frame 507 no-room",
                        "full: STOW 507 no-room",
                        "full: record 507 no-room, ready 503",
                        "full: case 201",
                        "full: what is held is read: 200 200 200",
                        "full: nothing else is on disk",
                        "room: refused before: record 201, C-STORE 0000, STOW 200, frame 201, case 201, ready 200",
                        "whole");
    }

    @Test
    void aServiceThatFindsNoRoomAtItsStartSaysSoAndStartsWhenThereIsSome() throws Exception {
        assertThat(SmallDisk.run(folder, 40, StartsWithoutRoom.class))
                .containsExactly("full: the disk is full, nothing is changed", "room: 3 objects are whole");
    }

    /** Stopped in order, started on a disk without a byte, and again when there is room. */
    static final class StartsWithoutRoom {
        private StartsWithoutRoom() {}

        public static void main(String[] arguments) throws Exception {
            Path disk = Path.of(arguments[0]);
            try (AtTheDoors doors = new AtTheDoors(disk, new LowWater(0, 0))) {
                for (int i = 0; i < 3; i++) {
                    doors.frame(InventedObjects.imageFile(1, 1, ++doors.next));
                }
            }
            byte[] store = Files.readAllBytes(disk.resolve("data/store.sqlite"));
            Path ballast = disk.resolve("ballast");
            try (var out = Files.newOutputStream(ballast)) {
                for (byte[] some = new byte[4096]; LowWater.free(disk) > 0; ) {
                    out.write(some);
                }
            }
            try (AtTheDoors doors = new AtTheDoors(disk, new LowWater(0, 0))) {
                AtTheDoors.say("started " + doors.service.port());
            } catch (StoreDamaged e) {
                boolean same = Arrays.equals(store, Files.readAllBytes(disk.resolve("data/store.sqlite")));
                AtTheDoors.say(
                        "full: " + (e.getMessage().contains("disk is full") ? "the disk is full" : e.getMessage())
                                + ", " + (same ? "nothing is changed" : "changed"));
            }
            Files.delete(ballast);
            new AtTheDoors(disk, new LowWater(0, 0)).close();
            try (DataFolder data = DataFolder.open(disk.resolve("data"));
                    SqliteStore held = SqliteStore.open(data.database())) {
                Inspection inspection = new Inspection(data, held);
                boolean whole =
                        inspection.missing().isEmpty() && inspection.altered().isEmpty();
                AtTheDoors.say("room: " + held.objects().size() + " objects are " + (whole ? "whole" : "damaged"));
            }
        }
    }

    /** A service on a disk that is filled up, and its senders. */
    static final class AtTheDoors implements AutoCloseable {
        private static final ObjectMapper JSON = new ObjectMapper();
        private static final int LEFT_BYTES = 200_000;
        private static final int MOST_TRIES = 400;
        private static final String EXPLICIT = "1.2.840.10008.1.2.1";
        private static final SampleSet SET = new SampleSet(1);
        private static final SampleObjects FRAMES = new SampleObjects(SET);

        private final Path outside;
        private final HttpClient client = HttpClient.newHttpClient();
        private final Service service;
        private int next = 1;

        private AtTheDoors(Path disk, LowWater reserve) throws IOException {
            outside = Files.createDirectories(disk.resolveSibling("outside"));
            Path config = Files.writeString(
                    outside.resolve("plumbline.json"),
                    "{\"schema\":\"plumbline-service/1\",\"port\":0,\"dataFolder\":\"" + disk.resolve("data")
                            + "\",\"dicom\":{\"port\":0},\"peers\":[{\"name\":\"us1\",\"aeTitle\":\"US1\","
                            + "\"addresses\":[\"127.0.0.1\"]}]}");
            service = Service.start(Main.settings(ServiceConfig.read(config)), reserve);
        }

        /** The folder of the small disk, and how many bytes of it the service leaves free. */
        public static void main(String[] arguments) throws Exception {
            Path disk = Path.of(arguments[0]);
            long reserve = Long.parseLong(arguments[1]);
            try (AtTheDoors doors = new AtTheDoors(disk, new LowWater(reserve, 0))) {
                doors.frame(FRAMES.file(SET.inPlanePlan()));
                doors.frame(FRAMES.file(SET.inPlaneNeedle()));
                say("room: record " + status(doors.record("first")) + ", C-STORE "
                        + doors.store(doors.next).code() + ", STOW " + status(doors.stow(++doors.next)) + ", frame "
                        + status(doors.frame(InventedObjects.imageFile(1, 1, ++doors.next))));
                doors.awaitWhole();
                Path ballast = disk.resolve("ballast");
                fill(ballast, reserve);
                doors.whenFull(disk);
                Files.delete(ballast);
                doors.whenThereIsRoom();
            }
            try (DataFolder data = DataFolder.open(disk.resolve("data"));
                    SqliteStore store = SqliteStore.open(data.database())) {
                Inspection inspection = new Inspection(data, store);
                say(inspection.missing().isEmpty() && inspection.altered().isEmpty() ? "whole" : "damaged");
            }
        }

        /** The companions of what was signed are on the disk. */
        private void awaitWhole() throws Exception {
            String record = json(get("/v1/records", "application/json"))
                    .at("/records/0/recordUid")
                    .asText();
            JsonNode found = json(get("/dicomweb/instances?SOPInstanceUID=" + record, "application/dicom+json"));
            String study = found.at("/0/0020000D/Value/0").asText();
            int objects = json(get("/v1/records/" + record, "application/json"))
                    .path("objects")
                    .size();
            int held = json(get("/dicomweb/instances?StudyInstanceUID=" + study, "application/dicom+json"))
                    .size();
            if (held < objects) {
                throw new IllegalStateException("The record is not whole.");
            }
        }

        private void whenFull(Path disk) throws Exception {
            Reply refused = store(++next);
            for (int i = 0; i < MOST_TRIES && refused.isSuccess(); i++) {
                refused = store(++next);
            }
            say("full: C-STORE " + refused.code() + " " + refused.comment());
            say("full: frame " + problem(frame(FRAMES.file(SET.outOfPlanePlan()))));
            HttpResponse<byte[]> stow = stow(next);
            say("full: STOW "
                    + (type(stow).contains("problem") ? problem(stow) : stow.statusCode() + " " + reason(stow)));
            say("full: record " + problem(record("second")) + ", ready " + status(get("/health/ready", "*/*")));
            HttpResponse<byte[]> kept = open("case-0");
            for (int i = 1; i < MOST_TRIES && kept.statusCode() == 201; i++) {
                kept = open("case-" + i);
            }
            say("full: case " + (kept.statusCode() == 201 ? "201" : problem(kept)));
            String record = json(get("/v1/records", "application/json"))
                    .at("/records/0/recordUid")
                    .asText();
            say("full: what is held is read: " + status(get("/v1/records/" + record, "application/dicom")) + " "
                    + status(get("/v1/records/" + record, "text/plain")) + " "
                    + status(get("/v1/status", "application/json")));
            int held = json(get("/dicomweb/instances?limit=1000", "application/dicom+json"))
                    .size();
            try (Stream<Path> files = Files.walk(disk.resolve("data"))) {
                long objects = files.filter(file -> file.toString().matches(".*\\.(dcm|tmp)"))
                        .count();
                say(objects == held ? "full: nothing else is on disk" : objects + " files for " + held + " objects");
            }
        }

        private void whenThereIsRoom() throws Exception {
            say("room: refused before: record " + status(record("second")) + ", C-STORE "
                    + store(next).code() + ", STOW " + status(stow(next)) + ", frame "
                    + status(frame(FRAMES.file(SET.outOfPlanePlan()))) + ", case " + status(open("another"))
                    + ", ready "
                    + status(get("/health/ready", "*/*")));
        }

        /** A file that leaves a little above the reserve. */
        private static void fill(Path ballast, long reserve) throws IOException {
            byte[] some = new byte[1 << 16];
            try (var out = Files.newOutputStream(ballast)) {
                while (LowWater.free(ballast.getParent()) - reserve > LEFT_BYTES + some.length) {
                    out.write(some);
                }
            }
        }

        private static void say(String line) {
            System.out.println(line);
        }

        private Reply store(int number) throws IOException {
            byte[] object = InventedObjects.imageFile(1, 1, number);
            Path file = Files.write(outside.resolve("object.dcm"), object);
            Peer we = new Peer("PLUMBLINE", "127.0.0.1", service.dicomPort().orElseThrow(), Optional.empty());
            Wanted storage = Wanted.use(InventedObjects.ULTRASOUND, List.of(EXPLICIT));
            try (Association association = new Requestor("US1", Timeouts.USUAL).open(we, List.of(storage))) {
                return new ServiceUser(association, Timeouts.USUAL)
                        .store(new ServiceUser.StoredFile(
                                file, InventedObjects.ULTRASOUND, InventedObjects.instanceUid(1, 1, number), EXPLICIT));
            }
        }

        private HttpResponse<byte[]> stow(int number) throws Exception {
            return post("/dicomweb/studies", "application/dicom", InventedObjects.imageFile(1, 1, number));
        }

        private HttpResponse<byte[]> frame(byte[] file) throws Exception {
            return post("/v1/frames", "application/dicom", file);
        }

        private HttpResponse<byte[]> record(String caseId) throws Exception {
            return post("/v1/records", "application/json", text(SampleWork.signed(caseId)));
        }

        private HttpResponse<byte[]> open(String caseId) throws Exception {
            return post("/v1/cases", "application/json", text(SampleWork.signed(caseId)));
        }

        private static byte[] text(String json) {
            return json.getBytes(StandardCharsets.UTF_8);
        }

        private HttpResponse<byte[]> post(String path, String type, byte[] body) throws Exception {
            return send(HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + service.port() + path))
                    .header("Content-Type", type)
                    .header("Accept", type.equals("application/dicom") ? "*/*" : type)
                    .POST(HttpRequest.BodyPublishers.ofByteArray(body)));
        }

        private HttpResponse<byte[]> get(String path, String accept) throws Exception {
            return send(HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + service.port() + path))
                    .header("Accept", accept)
                    .GET());
        }

        private HttpResponse<byte[]> send(HttpRequest.Builder request) throws Exception {
            return client.send(request.build(), HttpResponse.BodyHandlers.ofByteArray());
        }

        private static int status(HttpResponse<byte[]> answer) {
            return answer.statusCode();
        }

        private static String type(HttpResponse<byte[]> answer) {
            return answer.headers().firstValue("Content-Type").orElse("");
        }

        private static JsonNode json(HttpResponse<byte[]> answer) throws IOException {
            return JSON.readTree(answer.body());
        }

        /** Status and the last part of the problem's type; the remedy must be there. */
        private static String problem(HttpResponse<byte[]> answer) throws IOException {
            JsonNode problem = json(answer);
            String type = problem.path("type").asText().replace("urn:plumbline:problem:", "");
            return answer.statusCode() + " " + (problem.path("remedy").asText().isEmpty() ? "without remedy" : type);
        }

        /** The failure reason of the only object. */
        private static String reason(HttpResponse<byte[]> answer) throws IOException {
            JsonNode failed = json(answer).findPath("00081197").path("Value").path(0);
            return String.format("%04X", failed.asInt());
        }

        @Override
        public void close() throws IOException {
            service.close();
        }
    }
}
