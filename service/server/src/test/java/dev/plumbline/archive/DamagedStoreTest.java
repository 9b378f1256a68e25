// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * A store as a crashed machine with a lying disk leaves it: database or log cut somewhere in their last 64 KB, or with a bit
 * turned over. It opens or says what is damaged, again and again the same; and no object is forgotten without a word. 60
 * times each, in the nightly profile 1 000. TRUST T4.
 */
@Timeout(3600)
class DamagedStoreTest {
    private static final int TRIALS = Integer.getInteger("plumbline.damages", 60);
    private static final long SEED = Long.getLong("plumbline.seed", 20261129L);
    private static final int RECORDS = 12;
    private static final int LAST_BYTES = 1 << 16;
    private static final Instant NOW = Instant.parse("2026-01-05T09:30:00Z");

    @TempDir
    Path root;

    private Path left;
    private final Random random = new Random(SEED);

    /** Everything as it lies on the disk while the service runs: the log is not yet written back. */
    @BeforeEach
    void leave() throws IOException {
        Path running = root.resolve("running");
        left = root.resolve("left");
        try (DataFolder folder = DataFolder.open(running);
                SqliteStore store = SqliteStore.open(folder.database())) {
            Archive archive = new Archive(folder, store, new LowWater(0, 0));
            for (int i = 1; i <= RECORDS; i++) {
                archive.receive(new ByteArrayInputStream(InventedObjects.imageFile(1, 1, i)));
                StoredCase opened = new StoredCase("case-" + i, "{\"i\":" + i + "}", NOW);
                store.write(writing -> writing.add(opened));
                if (i == RECORDS / 2) {
                    store.pragma("wal_checkpoint(TRUNCATE)");
                }
            }
            copy(running, left);
        }
        System.out.println("damages " + TRIALS + ", seed " + SEED);
    }

    private static void copy(Path from, Path to) throws IOException {
        try (var all = Files.walk(from)) {
            for (Path path : all.toList()) {
                Path target = to.resolve(from.relativize(path).toString());
                if (Files.isDirectory(path)) {
                    Files.createDirectories(target);
                } else {
                    Files.copy(path, target);
                }
            }
        }
    }

    private interface Damaging {
        byte[] damaged(byte[] bytes);
    }

    @Test
    void cutSomewhere() throws Exception {
        int forgetful = trials(bytes -> Arrays.copyOf(bytes, bytes.length - 1 - random.nextInt(last(bytes))));
        assertThat(forgetful).as("a cut log forgets what was written last").isPositive();
    }

    @Test
    void withABitTurnedOver() throws Exception {
        trials(bytes -> {
            byte[] turned = bytes.clone();
            turned[bytes.length - 1 - random.nextInt(last(bytes))] ^= (byte) (1 << random.nextInt(8));
            return turned;
        });
    }

    private static int last(byte[] bytes) {
        return Math.min(LAST_BYTES, bytes.length - 1);
    }

    /** @return how many of the damaged stores open and have forgotten an object */
    private int trials(Damaging damaging) throws Exception {
        byte[] database = Files.readAllBytes(left.resolve("store.sqlite"));
        byte[] log = Files.readAllBytes(left.resolve("store.sqlite-wal"));
        int forgetful = 0;
        for (int i = 0; i < TRIALS; i++) {
            boolean inLog = random.nextBoolean();
            byte[] firstDatabase = inLog ? database : damaging.damaged(database);
            byte[] firstLog = inLog ? damaging.damaged(log) : log;
            put(firstDatabase, firstLog);
            String first = opened();
            assertThat(opened()).as("trial %d, again", i).isEqualTo(first);
            forgetful += first.startsWith("opens") && !first.endsWith(" 0") ? 1 : 0;
        }
        return forgetful;
    }

    private void put(byte[] database, byte[] log) throws IOException {
        Files.write(left.resolve("store.sqlite"), database);
        Files.write(left.resolve("store.sqlite-wal"), log);
        Files.deleteIfExists(left.resolve("store.sqlite-shm"));
    }

    /** What a start finds: the file that is damaged, or how many objects and cases there are and how many files too many. */
    private String opened() throws IOException {
        try (DataFolder folder = DataFolder.open(left);
                SqliteStore store = SqliteStore.open(folder.databaseInUse())) {
            Findings found = new Inspection(folder, store).quick();
            List<HeldFile> files = store.files();
            assertThat(found.unindexed() + files.size() - found.damages().size())
                    .as("every object is in the index or counted beside it")
                    .isEqualTo(RECORDS);
            long cases = 0;
            for (int i = 1; i <= RECORDS; i++) {
                cases += store.storedCase("case-" + i).isPresent() ? 1 : 0;
            }
            return "opens: " + files.size() + " objects, " + cases + " cases, too many files: " + found.unindexed();
        } catch (StoreDamaged damage) {
            assertThat(damage).hasMessageContaining("store.sqlite");
            return "says so";
        }
    }
}
