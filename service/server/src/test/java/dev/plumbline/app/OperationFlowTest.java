// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.app;

import static dev.plumbline.app.ServiceProcess.run;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.plumbline.peer.PeerProcess;
import dev.plumbline.peer.QueryRetrievePeer;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** What a site does beside documenting: looks, tries again, gives up, verifies, copies, restores, mends. TRUST 6, T6, T18. */
@Timeout(180)
class OperationFlowTest {
    @TempDir
    Path folder;

    private static String peers(int port) {
        return ",\"peers\":[{\"name\":\"pacs\",\"aeTitle\":\"" + QueryRetrievePeer.AE_TITLE
                + "\",\"host\":\"127.0.0.1\",\"port\":" + port + ",\"uses\":[\"archive\"]},"
                + "{\"name\":\"us1\",\"aeTitle\":\"US1\",\"addresses\":[\"127.0.0.1\"]}]";
    }

    private static JsonNode json(ServiceProcess.Ended ended) throws IOException {
        return new ObjectMapper().readTree(ended.out());
    }

    private static ServiceProcess.Ended on(ServiceProcess.Site site, String... command) {
        List<String> all = new ArrayList<>(List.of(command));
        all.addAll(List.of("--config", site.config().toString()));
        return run(all.toArray());
    }

    @Test
    void anArchiveThatIsDownTheWholeTimeAndThenComesBack() throws Exception {
        int port = PeerProcess.freePort();
        ServiceProcess.Site site = ServiceProcess.Site.in(folder, peers(port));
        try (ServiceProcess service = ServiceProcess.start(site)) {
            SampleWork.frames(service);
            for (int i = 1; i <= 3; i++) {
                assertThat(service.post("/v1/records", SampleWork.signed("down-" + i))
                                .status())
                        .isEqualTo(201);
            }
            service.awaitWhole();
            lookAndDecide(site, service);
        }
        fromTheFolder(site);
        try (QueryRetrievePeer archive = QueryRetrievePeer.start(folder, port);
                ServiceProcess service = ServiceProcess.start(site)) {
            JsonNode counts = service.awaitProved(2, Duration.ofSeconds(30));
            assertThat(counts.path("proved").asInt()).as(counts.toString()).isEqualTo(2);
            assertThat(counts.path("released").asInt()).isEqualTo(1);
            assertThat(PeerArchive.in(archive.store()).files()).hasSize(2 * 7);
            assertThat(service.post("/v1/dispatch/1/retry", "").status()).isEqualTo(409);
            assertThat(service.post("/v1/dispatch/1/release", "").status()).isEqualTo(409);
            ServiceProcess.Ended verified = on(site, "verify");
            assertThat(verified.code()).as(verified.out()).isZero();
            assertThat(verified.out()).contains("C-ECHO is answered.", "Comprehensive SR is taken.", "only calls us");
            assertThat(on(site, "status").code()).isZero();
            assertThat(on(site, "status").out()).contains("No record waits to be proved.");
        }
        ServiceProcess.Ended wrong = on(site, "verify", "--json");
        assertThat(wrong.code()).isEqualTo(1);
        assertThat(json(wrong).path("ok").asBoolean()).isFalse();
        assertThat(wrong.out()).contains("Nothing answers at port " + port);
    }

    /** Everything that a record and its frames say of a person, searched for by name. */
    private static void requireNoPatientIn(ServiceProcess.Site site, ServiceProcess service, String record)
            throws Exception {
        ServiceProcess.Ended bundle = on(site, "support-bundle");
        assertThat(bundle.code()).as(bundle.err()).isZero();
        JsonNode told = json(bundle);
        assertThat(told.path("configuration").path("peers")).isNotEmpty();
        assertThat(told.path("dispatches")).isNotEmpty();
        assertThat(told.path("version").asText()).startsWith("plumbline ");
        List<String> canaries = new ArrayList<>(List.of(record, "down-1", "down-2", "kept"));
        service.get("/dicomweb/instances", "application/dicom+json").json().forEach(instance -> {
            for (String tag : List.of("00080018", "0020000D", "0020000E", "00100020", "00080050")) {
                canaries.add(instance.path(tag).path("Value").path(0).asText());
            }
            canaries.add(instance.at("/00100010/Value/0/Alphabetic").asText());
        });
        canaries.removeIf(String::isBlank);
        assertThat(canaries).hasSizeGreaterThan(10);
        for (String canary : canaries) {
            assertThat(bundle.out()).doesNotContain(canary);
        }
    }

    private static void lookAndDecide(ServiceProcess.Site site, ServiceProcess service) throws Exception {
        JsonNode list = json(on(site, "dispatch", "list", "--json"));
        assertThat(list).isEqualTo(ageless(list, service.get("/v1/dispatch").json()));
        assertThat(list.path("counts").path("queued").asInt()).isEqualTo(3);
        JsonNode newest = list.path("dispatches").get(0);
        assertThat(service.get("/v1/dispatch?caseId=" + newest.path("caseId").asText())
                        .json()
                        .path("dispatches"))
                .extracting(dispatch -> dispatch.path("id").asInt())
                .containsExactly(newest.path("id").asInt());
        requireNoPatientIn(site, service, newest.path("recordUid").asText());
        assertThat(service.get("/pages/record?uid=" + newest.path("recordUid").asText())
                        .text())
                .contains("Dispatch to other archives", ">pacs<", ">queued<");
        assertThat(on(site, "dispatch").out()).contains("3 queued, 0 sent, 0 proved, 0 held, 0 released", "pacs");
        assertThat(on(site, "dispatch", "list", "--state", "held").out())
                .contains("3 queued")
                .doesNotContain("pacs");
        ServiceProcess.Ended one = on(site, "dispatch", "show", "2");
        assertThat(one.out()).contains("dispatch     2 to pacs", "state        queued");
        assertThat(service.get("/v1/dispatch/2").json().path("objects")).hasSize(7);
        assertThat(service.get("/v1/dispatch?state=proved").json().path("dispatches"))
                .isEmpty();
        assertThat(service.get("/v1/dispatch?state=lost").status()).isEqualTo(422);
        assertThat(service.get("/v1/dispatch/99").status()).isEqualTo(404);
        assertThat(service.get("/v1/dispatch/x").status()).isEqualTo(404);
        ServiceProcess.Answer noWorklist = service.get("/v1/worklist?date=2026-01-05");
        assertThat(noWorklist.status()).as("none configured").isEqualTo(200);
        assertThat(noWorklist.json().path("source").isNull()).isTrue();
        assertThat(noWorklist.json().path("items")).isEmpty();
        assertThat(noWorklist.json().path("text").asText()).contains("No worklist is configured");
        assertThat(service.post("/v1/dispatch/2/retry", "").json().path("state").asText())
                .isEqualTo("queued");
        assertThat(on(site, "dispatch", "retry", "1").code()).isZero();
        assertThat(on(site, "dispatch", "release", "3").out()).contains(", released ");
        assertThat(service.post("/v1/dispatch/3/retry", "").status()).isEqualTo(409);
        assertThat(on(site, "dispatch", "show", "99").code()).isEqualTo(2);
        assertThat(on(site, "dispatch", "show").err()).contains("Give the number");
        assertThat(on(site, "dispatch", "list", "--state", "lost").code()).isEqualTo(2);
        ServiceProcess.Ended status = on(site, "status");
        assertThat(status.out()).contains("The oldest record not yet proved", "dispatch 1 to pacs, queued");
        assertThat(service.get("/v1/status")
                        .json()
                        .path("oldestUnproved")
                        .path("id")
                        .asInt())
                .isEqualTo(1);
        assertThat(on(site, "doctor").err()).as("while it runs").contains("in use by another running Plumbline");
        try (ServiceProcess second = ServiceProcess.begin(site.on(site.data(), ""))) {
            assertThat(second.exitCode()).isEqualTo(2);
            assertThat(second.said())
                    .contains("in use by another running Plumbline")
                    .doesNotContain("\tat ");
        }
    }

    /** Ages differ by when they were asked for. */
    private static JsonNode ageless(JsonNode pattern, JsonNode other) {
        for (int i = 0; i < pattern.path("dispatches").size(); i++) {
            JsonNode from = pattern.path("dispatches").get(i);
            var to = (com.fasterxml.jackson.databind.node.ObjectNode)
                    other.path("dispatches").get(i);
            for (String field : List.of("age", "ageSeconds", "attempts", "nextAttempt", "code", "reason")) {
                to.set(field, from.get(field));
            }
        }
        return other;
    }

    private static void fromTheFolder(ServiceProcess.Site site) throws Exception {
        ServiceProcess.Ended list = on(site, "dispatch");
        assertThat(list.out()).contains("2 queued, 0 sent, 0 proved, 0 held, 1 released");
        ServiceProcess.Ended status = on(site, "status", "--json");
        assertThat(status.err()).contains("not running");
        assertThat(json(status).path("dispatch").path("queued").asInt()).isEqualTo(2);
        assertThat(on(site, "dispatch", "retry", "2").code()).isZero();
        ServiceProcess.Ended doctor = on(site, "doctor");
        assertThat(doctor.code()).as(doctor.out()).isZero();
        assertThat(doctor.out()).contains("23 objects are whole");
        JsonNode effective = json(on(site, "check-config"));
        assertThat(effective.path("dataFolder").asText()).isEqualTo(site.data().toString());
        assertThat(effective.path("peers").get(0).path("proof").asText()).isEqualTo("get");
        assertThat(on(site, "reindex").out()).contains("0 objects were added");
    }

    @Test
    void aConfigurationIsReadAsTheServiceWould() throws Exception {
        ServiceProcess.Site site = ServiceProcess.Site.in(folder, peers(104));
        assertThat(on(site, "check-config").code()).isZero();
        String text = Files.readString(site.config());
        for (String[] change : new String[][] {
            {"\"peers\"", "\"peeers\"", "peeers"},
            {"\"archive\"", "\"archiv\"", "/peers/0/uses"},
            {"\"aeTitle\":\"US1\"", "\"aeTitle\":\"A TITLE THAT IS TOO LONG\"", "/peers/1/aeTitle"},
            {"\"uses\"", "\"tokenFile\":\"x\",\"uses\"", "tokenFile"}
        }) {
            Files.writeString(site.config(), text.replace(change[0], change[1]));
            ServiceProcess.Ended refused = on(site, "check-config");
            assertThat(refused.code()).as(refused.out()).isEqualTo(2);
            assertThat(refused.err()).contains(change[2]).doesNotContain("\tat ");
        }
    }

    @Test
    void aServiceThatLostItsFolderAnswersTheSameFromTheCopy() throws Exception {
        ServiceProcess.Site site = ServiceProcess.Site.in(folder, peers(PeerProcess.freePort()));
        Path copy = folder.resolve("copy");
        Map<String, String> before;
        try (ServiceProcess service = ServiceProcess.start(site)) {
            SampleWork.frames(service);
            service.post("/v1/records", SampleWork.signed("kept-1"));
            service.post("/v1/cases", SampleWork.signed("kept-2"));
            service.awaitWhole();
            assertThat(on(site, "backup", "--to", copy.toString()).out()).contains("9 new objects");
            service.post("/v1/records", SampleWork.signed("kept-3"));
            service.post("/v1/dispatch/1/release", "");
            service.awaitWhole();
            ServiceProcess.Ended again = on(site, "backup", "--to", copy.toString());
            assertThat(again.code()).as(again.err()).isZero();
            assertThat(again.out()).contains("7 new objects", "name that folder as dataFolder");
            before = answers(service);
            service.kill();
        }
        try (Stream<Path> all = Files.walk(site.data())) {
            for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(path);
            }
        }
        ServiceProcess.Site restored = site.on(copy, peers(PeerProcess.freePort()));
        assertThat(on(restored, "doctor").out()).contains("16 objects are whole");
        try (ServiceProcess service = ServiceProcess.start(restored)) {
            assertThat(answers(service)).isEqualTo(before);
            assertThat(service.post("/v1/records", SampleWork.signed("kept-1")).status())
                    .isEqualTo(200);
            assertThat(service.post("/v1/records", SampleWork.signed("kept-4")).status())
                    .isEqualTo(201);
        }
        assertThat(on(site, "backup", "--to", copy.toString()).err()).contains("no data folder");
    }

    /** Everything that is asked of a service, apart from ages and times of attempts. */
    private static Map<String, String> answers(ServiceProcess service) throws Exception {
        Map<String, String> answers = new LinkedHashMap<>();
        for (String path : List.of(
                "/v1/records", "/v1/cases/kept-1", "/v1/cases/kept-2", "/v1/cases/kept-3", "/dicomweb/studies")) {
            ServiceProcess.Answer answer = service.get(path, "application/json, application/dicom+json");
            assertThat(answer.status()).as(path).isEqualTo(200);
            answers.put(path, answer.text());
        }
        for (JsonNode record : service.get("/v1/records").json().path("records")) {
            String path = "/v1/records/" + record.path("recordUid").asText();
            for (String type : List.of("application/json", "application/dicom", "text/plain")) {
                answers.put(
                        path + " " + type,
                        java.util.Arrays.hashCode(service.get(path, type).body()) + "");
            }
        }
        for (JsonNode dispatch : service.get("/v1/dispatch").json().path("dispatches")) {
            answers.put(
                    "dispatch " + dispatch.path("id"),
                    dispatch.path("state").asText() + dispatch.path("recordUid") + dispatch.path("released"));
        }
        return answers;
    }

    @Test
    void aDamagedStoreIsNamedAndNothingIsMadeWorse() throws Exception {
        ServiceProcess.Site site = ServiceProcess.Site.in(folder, "");
        String record;
        try (ServiceProcess service = ServiceProcess.start(site)) {
            SampleWork.frames(service);
            record = service.post("/v1/records", SampleWork.signed("kept"))
                    .json()
                    .path("recordUid")
                    .asText();
            service.awaitWhole();
        }
        Path database = site.data().resolve("store.sqlite");
        byte[] ruined = Files.readAllBytes(database);
        java.util.Arrays.fill(ruined, 0, 4096, (byte) 'x');
        Files.write(database, ruined);
        try (ServiceProcess service = ServiceProcess.start(site)) {
            assertThat(service.get("/health/live").status()).isEqualTo(200);
            assertThat(service.get("/health/ready").status()).isEqualTo(503);
            JsonNode status = service.get("/v1/status").json();
            assertThat(status.path("state").asText()).isEqualTo("degraded");
            assertThat(status.path("damages").get(0).asText()).contains("store.sqlite");
            for (String path : List.of("/v1/records", "/v1/dispatch", "/dicomweb/studies", "/v1/worklist")) {
                ServiceProcess.Answer refused = service.get(path);
                assertThat(refused.status()).as(path).isEqualTo(503);
                assertThat(refused.json().path("type").asText()).isEqualTo("urn:plumbline:problem:unavailable");
            }
            assertThat(service.post("/v1/records", SampleWork.signed("new")).status())
                    .isEqualTo(503);
            assertThat(on(site, "status").code()).as("a person has to act").isEqualTo(1);
        }
        assertThat(Files.readAllBytes(database)).isEqualTo(ruined);
        ServiceProcess.Ended doctor = on(site, "doctor");
        assertThat(doctor.code()).isEqualTo(1);
        assertThat(doctor.out()).contains("store.sqlite");
        assertThat(on(site, "reindex").code()).isNotZero();
        ServiceProcess.Ended mended = on(site, "reindex", "--set-damaged-store-aside");
        assertThat(mended.code()).as(mended.err()).isZero();
        assertThat(mended.out()).contains("9 objects were added to the index, which now has 9.");
        try (Stream<Path> all = Files.list(site.data())) {
            assertThat(all.filter(path -> path.getFileName().toString().startsWith("store.sqlite.damaged-"))
                            .map(OperationFlowTest::bytes)
                            .toList())
                    .contains(ruined);
        }
        try (ServiceProcess service = ServiceProcess.start(site)) {
            assertThat(service.get("/health/ready").status()).isEqualTo(200);
            assertThat(service.get("/dicomweb/instances?SOPInstanceUID=" + record, "application/dicom+json")
                            .json())
                    .hasSize(1);
        }
        aMissingFile(site);
    }

    /** A new one would know nothing of what is still to be sent, and say that all is well. */
    @Test
    void aLostStoreIsSaidAndWhatItHadQueuedIsQueuedByOrder() throws Exception {
        ServiceProcess.Site site = ServiceProcess.Site.in(folder, peers(PeerProcess.freePort()));
        String record;
        String device;
        try (ServiceProcess service = ServiceProcess.start(site)) {
            SampleWork.frames(service);
            record = service.post("/v1/records", SampleWork.signed("kept"))
                    .json()
                    .path("recordUid")
                    .asText();
            service.awaitWhole();
            device = deviceOf(service, record);
        }
        for (String suffix : List.of("", "-wal", "-shm")) {
            Files.deleteIfExists(site.data().resolve("store.sqlite" + suffix));
        }
        for (int i = 0; i < 2; i++) { // and it does not become a new one by being started twice
            try (ServiceProcess service = ServiceProcess.start(site)) {
                assertThat(service.get("/health/ready").status()).isEqualTo(503);
                assertThat(service.get("/v1/status")
                                .json()
                                .path("damages")
                                .get(0)
                                .asText())
                        .contains("store.sqlite", "reindex");
            }
        }
        assertThat(on(site, "doctor").code()).isEqualTo(1);
        assertThat(on(site, "dispatch", "list").code()).isNotZero();
        ServiceProcess.Ended rebuilt = on(site, "reindex", "--send");
        assertThat(rebuilt.code()).as(rebuilt.err()).isZero();
        assertThat(rebuilt.out()).contains("1 records and withdrawals were read");
        try (ServiceProcess service = ServiceProcess.start(site)) {
            JsonNode waiting = service.get("/v1/dispatch").json().path("dispatches");
            assertThat(waiting).hasSize(1);
            assertThat(waiting.get(0).path("recordUid").asText()).isEqualTo(record);
            assertThat(on(site, "dispatch", "queue", "--record", record).err()).contains("was queued for every");
            assertThat(on(site, "dispatch", "queue", "--record", "1.2.3").code())
                    .isEqualTo(2);
            String next = service.post("/v1/records", SampleWork.signed("next"))
                    .json()
                    .path("recordUid")
                    .asText();
            assertThat(deviceOf(service, next)).as("the same installation").isEqualTo(device);
        }
        ServiceProcess.Site more = site.on(
                site.data(),
                peers(104)
                        .replace(
                                "\"name\":\"us1\"",
                                "\"uses\":[\"archive\"],\"host\":\"127.0.0.1\",\"port\":105,\"name\":\"us1\""));
        ServiceProcess.Ended queued = on(more, "dispatch", "queue", "--record", record);
        assertThat(queued.code()).as(queued.err()).isZero();
        assertThat(queued.out()).contains("us1").contains("pacs");
    }

    private static String deviceOf(ServiceProcess service, String record) throws Exception {
        String text = new String(
                service.get("/v1/records/" + record, "application/dicom").body(),
                java.nio.charset.StandardCharsets.ISO_8859_1);
        java.util.regex.Matcher serial =
                java.util.regex.Pattern.compile("2\\.25\\.[0-9]+").matcher(text.substring(text.indexOf("121012")));
        assertThat(serial.find()).isTrue();
        return serial.group();
    }

    private static byte[] bytes(Path path) {
        try {
            return Files.readAllBytes(path);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private static void aMissingFile(ServiceProcess.Site site) throws Exception {
        Path lost;
        try (Stream<Path> all = Files.walk(site.data().resolve("objects"))) {
            lost = all.filter(Files::isRegularFile).sorted().findFirst().orElseThrow();
        }
        Path aside = site.data().resolveSibling("aside.dcm");
        Files.move(lost, aside);
        ServiceProcess.Ended doctor = on(site, "doctor");
        assertThat(doctor.code()).isEqualTo(1);
        assertThat(doctor.out()).contains(lost + ": missing", "1 of 9 objects are damaged");
        try (ServiceProcess service = ServiceProcess.start(site)) {
            assertThat(service.get("/health/ready").status()).isEqualTo(503);
            assertThat(service.get("/v1/status").json().path("damages").get(0).asText())
                    .isEqualTo(lost + ": missing");
            assertThat(service.get("/v1/records").status())
                    .as("the rest is served")
                    .isEqualTo(200);
        }
        Files.move(aside, lost);
        assertThat(on(site, "doctor").code()).isZero();
    }
}
