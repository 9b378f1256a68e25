// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.app;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import dev.plumbline.peer.PeerProcess;
import dev.plumbline.peer.QueryRetrievePeer;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * A service under load is killed (SIGKILL) at random instants, from its first moment on; the archive is DCMTK's dcmqrscp.
 * Afterwards every record that was acknowledged is there exactly once and says the same as ours. TRUST T3; the nightly
 * profile kills a thousand times.
 */
@Timeout(7200)
class KilledServiceFlowTest {
    private static final int KILLS = Integer.getInteger("plumbline.kills", 50);
    private static final long SEED = Long.getLong("plumbline.seed", 20261128L);
    private static final int CLIENTS = 2;
    private static final int LONGEST_LIFE_MS = 800;
    private static final int LONGEST_AFTER_ANSWER_MS = 300;

    @TempDir
    Path folder;

    private final Map<String, List<String>> acknowledged = new ConcurrentHashMap<>();
    private final AtomicInteger cases = new AtomicInteger();
    private final AtomicInteger killedAtWork = new AtomicInteger();

    private static String peers(int port) {
        return ",\"companions\":{\"presentationStates\":false,\"pdf\":false,\"keyObjects\":false},"
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
            SampleWork.frames(first);
            // so that the classes of a record are in the archive of classes too, and every later start is quick
            acknowledged.put(
                    "killed-0",
                    SampleLoad.uids(first.post("/v1/records", SampleWork.signed("killed-0"))
                            .json()));
        }
        try (QueryRetrievePeer archive = QueryRetrievePeer.start(folder, port)) {
            for (int i = 0; i < KILLS; i++) {
                trial(ServiceProcess.begin(site, path, new String[] {"-XX:SharedArchiveFile=" + shared}), random);
            }
            assertThat(acknowledged).as("records acknowledged").hasSizeGreaterThan(KILLS / 5);
            assertThat(killedAtWork.get()).as("kills while a request was open").isGreaterThan(KILLS / 4);
            try (ServiceProcess last = ServiceProcess.start(site)) {
                JsonNode held = last.get("/v1/status").json().path("dispatch");
                int all = held.path("queued").asInt()
                        + held.path("sent").asInt()
                        + held.path("proved").asInt();
                assertThat(all).as("every record is queued once").isBetween(acknowledged.size(), cases.get() + 1);
                JsonNode counts = last.awaitProved(all, Duration.ofSeconds(60 + KILLS / 4));
                assertThat(counts.path("proved").asInt())
                        .as(counts + last.get("/v1/dispatch").text())
                        .isEqualTo(all);
                requireEverything(archive, site, last);
            }
        }
    }

    private void requireEverything(QueryRetrievePeer archive, ServiceProcess.Site site, ServiceProcess last)
            throws Exception {
        PeerArchive theirs = PeerArchive.in(archive.store());
        PeerArchive ours = PeerArchive.in(site.data().resolve("objects"));
        List<String> complaints = new ArrayList<>();
        for (Map.Entry<String, List<String>> each : acknowledged.entrySet()) {
            JsonNode again =
                    last.post("/v1/records", SampleWork.signed(each.getKey())).json();
            assertThat(SampleLoad.uids(again)).as("answered as before").isEqualTo(each.getValue());
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
        System.out.println(acknowledged.size() + " records acknowledged of " + cases.get() + ", " + complaints.size()
                + " looks, killed at work " + killedAtWork.get());
    }

    private void trial(ServiceProcess service, Random random) throws Exception {
        boolean early = random.nextInt(10) == 0; // now and then before it answers at all
        if (!early) {
            service.awaitAnswer();
        }
        SampleLoad load = new SampleLoad(service, CLIENTS, cases, acknowledged);
        load.start();
        if (!early && random.nextInt(3) == 0) {
            // a young process is slow at its first record; so that many are killed at their work and not at the
            // beginning
            load.awaitMore(1 + random.nextInt(2));
            Thread.sleep(random.nextInt(LONGEST_AFTER_ANSWER_MS));
        } else {
            Thread.sleep(random.nextInt(LONGEST_LIFE_MS));
        }
        if (load.open() > 0) {
            killedAtWork.incrementAndGet();
        }
        service.kill();
        load.stop();
    }

    /** Clients that send one signed case after the other until nobody answers, or a time is over. */
    static final class SampleLoad {
        private final ServiceProcess service;
        private final AtomicInteger cases;
        private final Map<String, List<String>> acknowledged;
        private final List<Thread> threads = new ArrayList<>();
        private final AtomicInteger open = new AtomicInteger();
        private volatile boolean going = true;

        SampleLoad(ServiceProcess service, int clients, AtomicInteger cases, Map<String, List<String>> acknowledged) {
            this.service = service;
            this.cases = cases;
            this.acknowledged = acknowledged;
            for (int i = 0; i < clients; i++) {
                threads.add(new Thread(this::send, "client-" + i));
            }
        }

        private void send() {
            while (going) {
                String caseId = "killed-" + cases.incrementAndGet();
                open.incrementAndGet();
                try {
                    ServiceProcess.Answer answer = service.post("/v1/records", SampleWork.signed(caseId));
                    if (answer.status() == 201) {
                        acknowledged.put(caseId, uids(answer.json()));
                    }
                } catch (IOException e) {
                    pause(); // killed, or not there yet
                } catch (InterruptedException e) {
                    return;
                } finally {
                    open.decrementAndGet();
                }
            }
        }

        private static void pause() {
            try {
                Thread.sleep(10);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        }

        static List<String> uids(JsonNode kept) {
            List<String> uids = new ArrayList<>();
            kept.path("objects").forEach(uid -> uids.add(uid.asText()));
            return uids;
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
