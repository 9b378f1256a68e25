// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.app;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import dev.plumbline.archive.InventedObjects;
import dev.plumbline.peer.PeerProcess;
import dev.plumbline.peer.QueryRetrievePeer;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * A service under load is killed (SIGKILL) at random instants, from its first moment on, mostly after it acknowledged some
 * records since its start; the archive is DCMTK's dcmqrscp. Afterwards every record that was acknowledged is there exactly
 * once and says the same as ours, and every object that a modality was told is kept is held and whole. TRUST T3; the nightly
 * profile kills a thousand times.
 */
@Timeout(7200)
class KilledServiceFlowTest {
    private static final int KILLS = Integer.getInteger("plumbline.kills", 50);
    private static final long SEED = Long.getLong("plumbline.seed", 20261128L);
    private static final int CLIENTS = 2;
    private static final int LONGEST_BEFORE_ANSWER_MS = 800;
    private static final int LONGEST_AFTER_RECORD_MS = 300;
    private static final int MOST_RECORDS_AWAITED = 6;

    @TempDir
    Path folder;

    private final Map<String, List<String>> acknowledged = new ConcurrentHashMap<>();
    private final Set<String> kept = ConcurrentHashMap.newKeySet();
    private final AtomicInteger cases = new AtomicInteger();
    private final AtomicInteger objects = new AtomicInteger();
    private final AtomicInteger killedAtWork = new AtomicInteger();
    private final AtomicInteger killedAfterSeveral = new AtomicInteger();

    private static String peers(int port) {
        return ",\"companions\":{\"presentationStates\":false,\"pdf\":false,\"keyObjects\":true},"
                + "\"peers\":[{\"name\":\"pacs\",\"aeTitle\":\"" + QueryRetrievePeer.AE_TITLE
                + "\",\"host\":\"127.0.0.1\",\"port\":" + port + ",\"uses\":[\"archive\"],\"proof\":\"get\"}]";
    }

    @Test
    void everyAcknowledgedRecordIsInTheArchiveExactlyOnce() throws Exception {
        System.out.println("kills " + KILLS + ", seed " + SEED);
        Random random = new Random(SEED);
        int port = PeerProcess.freePort();
        ServiceProcess.Site site = ServiceProcess.Site.in(folder, peers(port));
        Path shared = folder.resolve("classes.jsa");
        String path = PackedClasses.path(folder);
        try (ServiceProcess first =
                ServiceProcess.begin(site, path, new String[] {"-XX:ArchiveClassesAtExit=" + shared})) {
            first.awaitAnswer();
            SmallWork.frame(first);
            // so that the classes of a record are in the archive of classes too, and every later start is quick
            acknowledged.put(
                    "killed-0",
                    uids(first.post("/v1/records", SmallWork.signed("killed-0")).json()));
        }
        try (QueryRetrievePeer archive = QueryRetrievePeer.start(folder, port)) {
            for (int i = 0; i < KILLS; i++) {
                trial(ServiceProcess.begin(site, path, new String[] {"-XX:SharedArchiveFile=" + shared}), random);
            }
            assertThat(acknowledged).as("records acknowledged").hasSizeGreaterThan(KILLS + KILLS / 2);
            assertThat(kept).as("objects acknowledged").hasSizeGreaterThan(KILLS);
            assertThat(killedAtWork.get()).as("kills while a request was open").isGreaterThan(KILLS / 2);
            assertThat(killedAfterSeveral.get())
                    .as("kills after several records since the start")
                    .isGreaterThan(KILLS / 3);
            try (ServiceProcess last = ServiceProcess.start(site)) {
                JsonNode held = last.get("/v1/status").json().path("dispatch");
                int all = held.path("queued").asInt()
                        + held.path("sent").asInt()
                        + held.path("proved").asInt();
                assertThat(all).as("every record is queued once").isBetween(acknowledged.size(), cases.get() + 1);
                JsonNode counts = last.awaitProved(all, Duration.ofSeconds(60 + 4L * KILLS));
                assertThat(counts.path("proved").asInt())
                        .as(counts + last.get("/v1/dispatch").text())
                        .isEqualTo(all);
                requireEverything(archive, site, last);
            }
            ServiceProcess.Ended doctor = ServiceProcess.run("doctor", "--config", site.config());
            assertThat(doctor.code()).as(doctor.out()).isZero();
        }
    }

    private void requireEverything(QueryRetrievePeer archive, ServiceProcess.Site site, ServiceProcess last)
            throws Exception {
        PeerArchive theirs = PeerArchive.in(archive.store());
        PeerArchive ours = PeerArchive.in(site.data().resolve("objects"));
        List<String> complaints = new ArrayList<>();
        for (Map.Entry<String, List<String>> each : acknowledged.entrySet()) {
            JsonNode again =
                    last.post("/v1/records", SmallWork.signed(each.getKey())).json();
            assertThat(uids(again)).as("answered as before").isEqualTo(each.getValue());
            for (String uid : each.getValue()) {
                complaints.add(theirs.complaint(uid, ours));
            }
        }
        // what was filed but not acknowledged before the kill may be there too, but nothing twice
        theirs.files()
                .keySet()
                .forEach(uid -> complaints.add(
                        theirs.files().get(uid).size() == 1 && ours.files().containsKey(uid)
                                ? ""
                                : uid + " is not ours once"));
        assertThat(complaints).isNotEmpty().allMatch(String::isEmpty);
        for (String uid : kept) {
            JsonNode found = last.get("/dicomweb/instances?SOPInstanceUID=" + uid, "application/dicom+json")
                    .json();
            assertThat(found).as(uid + " was acknowledged").hasSize(1);
        }
        System.out.println(acknowledged.size() + " records acknowledged of " + cases.get() + ", " + kept.size()
                + " objects of " + objects.get() + ", " + complaints.size() + " looks, killed at work " + killedAtWork
                + ", after several records " + killedAfterSeveral);
    }

    private void trial(ServiceProcess service, Random random) throws Exception {
        boolean early = random.nextInt(10) == 0; // now and then before it answers at all
        if (!early) {
            service.awaitAnswer();
        }
        int before = acknowledged.size();
        Load load = new Load(service);
        load.start();
        int awaited = early ? 0 : random.nextInt(MOST_RECORDS_AWAITED);
        if (awaited > 0) {
            load.awaitMore(awaited);
            Thread.sleep(random.nextInt(LONGEST_AFTER_RECORD_MS));
        } else {
            Thread.sleep(random.nextInt(LONGEST_BEFORE_ANSWER_MS)); // a young process is slow at its first record
        }
        if (load.open() > 0) {
            killedAtWork.incrementAndGet();
        }
        service.kill();
        load.stop();
        if (acknowledged.size() - before > 1) {
            killedAfterSeveral.incrementAndGet();
        }
    }

    private static List<String> uids(JsonNode kept) {
        List<String> uids = new ArrayList<>();
        kept.path("objects").forEach(uid -> uids.add(uid.asText()));
        return uids;
    }

    /**
     * Clients that send one signed case after the other until nobody answers, and a modality that sends images and breathes
     * between them.
     */
    private final class Load {
        private static final int BETWEEN_OBJECTS_MS = 50;
        private static final int OTHER_STUDY = 2;

        private final ServiceProcess service;
        private final List<Thread> threads = new ArrayList<>();
        private final AtomicInteger open = new AtomicInteger();
        private volatile boolean going = true;

        Load(ServiceProcess service) {
            this.service = service;
            for (int i = 0; i < CLIENTS; i++) {
                threads.add(new Thread(() -> repeat(this::record, 0), "client-" + i));
            }
            threads.add(new Thread(() -> repeat(this::object, BETWEEN_OBJECTS_MS), "modality"));
        }

        private interface Request {
            void send() throws IOException, InterruptedException;
        }

        private void repeat(Request request, int between) {
            try {
                while (going) {
                    open.incrementAndGet();
                    try {
                        request.send();
                    } catch (IOException e) {
                        Thread.sleep(10); // killed, or not there yet
                    } finally {
                        open.decrementAndGet();
                    }
                    Thread.sleep(between);
                }
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        }

        private void record() throws IOException, InterruptedException {
            String caseId = "killed-" + cases.incrementAndGet();
            ServiceProcess.Answer answer = service.post("/v1/records", SmallWork.signed(caseId));
            if (answer.status() == 201) {
                acknowledged.put(caseId, uids(answer.json()));
            }
        }

        private void object() throws IOException, InterruptedException {
            int number = objects.incrementAndGet();
            if (service.postDicom(InventedObjects.imageFile(OTHER_STUDY, 1, number))
                            .status()
                    == 201) {
                kept.add(InventedObjects.instanceUid(OTHER_STUDY, 1, number));
            }
        }

        void start() {
            threads.forEach(Thread::start);
        }

        /** Waits for so many more acknowledged records. */
        void awaitMore(int records) throws InterruptedException {
            int wanted = acknowledged.size() + records;
            long deadline = System.nanoTime() + Duration.ofSeconds(30).toNanos();
            while (acknowledged.size() < wanted && System.nanoTime() < deadline) {
                Thread.sleep(5);
            }
        }

        int open() {
            return open.get();
        }

        void stop() throws InterruptedException {
            going = false;
            for (Thread thread : threads) {
                thread.join();
            }
        }
    }
}
