// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.archive.Dispatch;
import dev.plumbline.archive.Dispatch.State;
import dev.plumbline.archive.HeldObject;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * There is one courier for a destination, and a second process is refused. Were there two, nothing would be lost, nothing
 * proved would become unproved again, and the archive would have every object.
 */
class TwoCouriersTest {
    private static final int RECORDS = 40;
    private static final long SEED = Long.getLong("plumbline.seed", 20261128L);

    @TempDir
    Path data;

    /** Objects by UID, with the digest of each that came under it; now and then it fails. */
    private static final class SharedArchive {
        private final Map<String, String> digests = new ConcurrentHashMap<>();

        /** @param slow by so many milliseconds at most, so that the other proves what this one still thinks is queued */
        Carrier carrier(long seed, int slow) {
            Random random = new Random(seed);
            return new Carrier() {
                @Override
                public Outcome send(HeldObject object) {
                    pause(random.nextInt(slow));
                    if (random.nextInt(5) == 0) {
                        return Outcome.of(Verdict.RECORD_LATER, "0110", "as the test says");
                    }
                    String other = digests.putIfAbsent(object.sopInstanceUid(), object.digest());
                    boolean same = other == null || other.equals(object.digest());
                    return Outcome.of(same ? Verdict.SENT : Verdict.HELD, "", "as the test says");
                }

                @Override
                public Proof prove(Question question) {
                    boolean there = digests.containsKey(question.object().sopInstanceUid());
                    return Proof.of(there ? Proof.Finding.PROVED : Proof.Finding.MISSING, "as the test says");
                }

                @Override
                public void rest() {
                    // holds nothing
                }
            };
        }

        private static void pause(int milliseconds) {
            try {
                Thread.sleep(milliseconds);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        }
    }

    @Test
    void loseNothingAndProveEverything() throws Exception {
        System.out.println("two couriers, seed " + SEED);
        try (FiledRecords records = new FiledRecords(data)) {
            for (int study = 1; study <= RECORDS; study++) {
                records.file(study);
            }
            SharedArchive archive = new SharedArchive();
            ExecutorService two = Executors.newFixedThreadPool(2);
            try {
                List<Future<?>> done = new ArrayList<>();
                for (int i = 0; i < 2; i++) {
                    Carrier carrier = archive.carrier(SEED + i, i == 0 ? 1 : 40);
                    done.add(two.submit(() -> carry(records, carrier)));
                }
                done.get(0).get(); // the quick one has proved everything; what the slow one thinks is older
                while (!done.get(1).isDone()) {
                    assertThat(proved(records))
                            .as("what is proved stays proved")
                            .isEqualTo(RECORDS);
                }
                done.get(1).get();
            } finally {
                two.shutdown();
            }
            assertThat(archive.digests).hasSize(2 * RECORDS);
            assertThat(proved(records)).isEqualTo(RECORDS);
            assertThat(records.store().dispatches().list(Optional.empty(), RECORDS, 0))
                    .flatExtracting(Dispatch::parts)
                    .allSatisfy(part -> assertThat(part.state()).isEqualTo(State.PROVED));
        }
    }

    private static void carry(FiledRecords records, Carrier carrier) {
        Courier courier =
                new Courier(new Destination(FiledRecords.TO, true, () -> carrier), records.archive, records.times());
        for (int i = 0; i < 200 && proved(records) < RECORDS; i++) {
            records.nanoTime.addAndGet(Duration.ofHours(1).toNanos());
            courier.round();
        }
    }

    private static int proved(FiledRecords records) {
        return records.count(State.PROVED);
    }
}
