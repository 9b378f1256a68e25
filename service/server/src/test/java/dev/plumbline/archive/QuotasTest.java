// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.dicom.DataSet;
import dev.plumbline.dicom.DicomFile;
import dev.plumbline.dicom.Tag;
import dev.plumbline.problem.Problem;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Nobody fills the disk for all. TRUST 2.2 (flooding: quota for each peer), 1 #18 (the largest object is configured). */
class QuotasTest {
    private static final Sender US1 = Sender.peer("US1");
    private static final Sender US2 = Sender.peer("US2");
    private static final ZoneId ZONE = ZoneId.of("Pacific/Auckland");
    private static final Instant EVENING = Instant.parse("2026-11-25T10:59:00Z");
    private static final long SIZE = InventedObjects.imageFile(1, 1, 1).length;

    @TempDir
    Path root;

    private DataFolder folder;
    private SqliteStore store;

    @BeforeEach
    void open() throws IOException {
        folder = DataFolder.open(root.resolve("data"));
        store = SqliteStore.open(folder.database());
    }

    @AfterEach
    void close() throws IOException {
        store.close();
        folder.close();
    }

    private Archive archive(long quota, Instant now) {
        Quotas quotas = new Quotas(Map.of(US1, quota), Clock.fixed(now, ZONE));
        return new Archive(folder, store, new Intake(new LowWater(0, 0), Intake.MOST_BYTES, quotas), Outbound.NOWHERE);
    }

    private static Reception send(Archive archive, Sender sender, int instance) {
        return archive.receive(new ByteArrayInputStream(InventedObjects.imageFile(1, 1, instance)), sender);
    }

    private static Problem refused(Reception reception) {
        assertThat(reception).isInstanceOf(Reception.Refused.class);
        return ((Reception.Refused) reception).problem();
    }

    private static void assertKept(Reception reception) {
        assertThat(reception).isInstanceOf(Reception.Kept.class);
    }

    private long files(String below) throws IOException {
        try (Stream<Path> all = Files.walk(folder.root().resolve(below))) {
            return all.filter(Files::isRegularFile).count();
        }
    }

    @Test
    void aSenderIsRefusedBeyondItsQuotaAndTheOthersAreNot() throws IOException {
        Archive archive = archive(2 * SIZE + 10, EVENING);
        assertKept(send(archive, US1, 1));
        assertKept(send(archive, US1, 2));
        Problem problem = refused(send(archive, US1, 3));
        assertThat(problem).isInstanceOf(Problem.NoRoom.class);
        assertThat(problem.detail()).contains("US1");
        assertThat(problem.remedy()).contains("dailyMegabytes");
        assertKept(send(archive, US2, 3));
        assertKept(archive.receive(new ByteArrayInputStream(InventedObjects.imageFile(1, 1, 4)), Optional.empty()));
        assertThat(store.objectCount()).isEqualTo(4);
        assertThat(files("objects")).isEqualTo(4);
        assertThat(files("incoming")).isZero();
    }

    @Test
    void aSenderWithoutAnyLeftIsRefusedBeforeItsBodyIsRead() {
        Archive archive = archive(SIZE, EVENING);
        assertKept(send(archive, US1, 1));
        InputStream untouched = new InputStream() {
            @Override
            public int read() {
                throw new AssertionError("nothing may be read");
            }
        };
        assertThat(refused(archive.receive(untouched, US1))).isInstanceOf(Problem.NoRoom.class);
        assertThat(archive.intakeWarnings())
                .singleElement()
                .asString()
                .contains("US1")
                .contains("midnight");
    }

    @Test
    void theQuotaBeginsAnewAtMidnightOfTheSitesZoneAndOutlivesARestart() throws IOException {
        assertKept(send(archive(SIZE, EVENING), US1, 1));
        close();
        open();
        refused(send(archive(SIZE, EVENING.plusSeconds(30)), US1, 2));
        assertKept(send(archive(SIZE, EVENING.plusSeconds(60)), US1, 2));
        assertThat(archive(SIZE, EVENING.plusSeconds(60)).intakeWarnings()).hasSize(1);
    }

    @Test
    void whatIsHeldAlreadyCostsNothing() {
        Archive archive = archive(2 * SIZE, EVENING);
        for (int i = 0; i < 10; i++) {
            assertKept(send(archive, US1, 1));
        }
        assertKept(send(archive, US1, 2));
    }

    /** Else somebody who sends contradicting objects would fill the disk with them. */
    @Test
    void whatIsPutInQuarantineCounts() throws IOException {
        Archive archive = archive(3 * SIZE + 100, EVENING);
        assertKept(send(archive, US2, 1));
        for (int i = 0; i < 10; i++) {
            DataSet other = InventedObjects.image(1, 1, 1).put(Tag.PATIENT_NAME, "Other^" + (char) ('A' + i));
            refused(archive.receive(new ByteArrayInputStream(DicomFile.encode(other)), US1));
        }
        assertThat(files("quarantine")).isBetween(1L, 3L);
        assertThat(refused(send(archive, US1, 2))).isInstanceOf(Problem.NoRoom.class);
    }

    @Test
    void manyWhoSendAtOnceDoNotGetMoreTogether() throws Exception {
        Archive archive = archive(5 * SIZE, EVENING);
        ExecutorService senders = Executors.newFixedThreadPool(8);
        try {
            List<Callable<Reception>> sendings = IntStream.rangeClosed(1, 40)
                    .mapToObj(i -> (Callable<Reception>) () -> send(archive, US1, i))
                    .toList();
            int kept = 0;
            for (Future<Reception> each : senders.invokeAll(sendings)) {
                kept += each.get() instanceof Reception.Kept ? 1 : 0;
            }
            assertThat(kept).isBetween(4, 5);
        } finally {
            senders.shutdownNow();
        }
        assertThat(files("objects")).isEqualTo(store.objectCount());
        assertThat(store.received(US1, LocalDate.ofInstant(EVENING, ZONE))).isLessThanOrEqualTo(5 * SIZE);
    }

    @Test
    void whatTheServiceComposesHasNeitherQuotaNorConfiguredSize() throws IOException {
        Quotas none = new Quotas(Map.of(Sender.HTTP, 1L, US1, 1L), Clock.fixed(EVENING, ZONE));
        Archive archive = new Archive(folder, store, new Intake(new LowWater(0, 0), 1, none), Outbound.NOWHERE);
        String report = InventedObjects.instanceUid(1, 1, 1);
        archive.file(new Filing(
                new StoredCase("case-1", "{}", EVENING),
                new StoredRevision(
                        "case-1",
                        1,
                        OffsetDateTime.parse("2026-01-05T10:30:00+01:00"),
                        StoredRevision.State.SIGNED,
                        "{}",
                        report,
                        List.of(report)),
                List.of(InventedObjects.imageFile(1, 1, 1)),
                Optional.empty(),
                EVENING));
        assertThat(store.objectCount()).isEqualTo(1);
    }

    /** Whoever announces no length could else fill the disk with a single object. */
    @Test
    void theDiskIsLookedAtAgainWhileALargeObjectComesIn() throws IOException {
        long free = LowWater.free(folder.root());
        Archive archive =
                new Archive(folder, store, Intake.above(new LowWater(free - (24L << 20), 0)), Outbound.NOWHERE);
        AtomicLong read = new AtomicLong();
        InputStream endless = new InputStream() {
            @Override
            public int read() {
                read.incrementAndGet();
                return 0;
            }

            @Override
            public int read(byte[] into, int offset, int count) {
                read.addAndGet(count);
                return read.get() > 1L << 30 ? -1 : count;
            }
        };
        assertThat(refused(archive.receive(endless, US1))).isInstanceOf(Problem.NoRoom.class);
        assertThat(read.get()).isLessThan(1L << 29);
        assertThat(files("incoming")).isZero();
    }

    @Test
    void anObjectBeyondTheConfiguredSizeIsRefused() throws IOException {
        Archive archive =
                new Archive(folder, store, new Intake(new LowWater(0, 0), SIZE - 1, Quotas.none()), Outbound.NOWHERE);
        assertThat(refused(send(archive, US1, 1))).isInstanceOf(Problem.TooLarge.class);
        assertThat(store.objectCount()).isZero();
        assertThat(files("incoming")).isZero();
    }
}
