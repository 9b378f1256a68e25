// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.archive.Dispatch;
import dev.plumbline.archive.Dispatch.State;
import dev.plumbline.archive.InventedObjects;
import dev.plumbline.config.ProofBy;
import dev.plumbline.dimse.LiarArchive;
import dev.plumbline.dimse.LiarArchive.Lie;
import dev.plumbline.dimse.Requestor;
import dev.plumbline.dimse.Timeouts;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One archive takes everything and never answers; the other one has its records all the same. TRUST T7. */
class TwoDestinationsFlowTest {
    private static final int RECORDS = 60;
    private static final String SLOW = "slow";
    private static final Timeouts PATIENT =
            new Timeouts(Duration.ofSeconds(1), Duration.ofSeconds(5), Duration.ofSeconds(5), Duration.ofSeconds(5));

    @TempDir
    Path data;

    @Test
    void theOneThatNeverAnswersHoldsUpItsOwnOnly() throws Exception {
        try (FiledRecords records = new FiledRecords(data, List.of(SLOW, FiledRecords.TO));
                LiarArchive liar = new LiarArchive(Lie.NO_ANSWER, 0)) {
            for (int study = 1; study <= RECORDS; study++) {
                records.file(study);
            }
            CountDownLatch seen = new CountDownLatch(2 * RECORDS);
            CountDownLatch last = new CountDownLatch(1);
            ToldArchive quick = new ToldArchive();
            quick.proving = question -> {
                seen.countDown();
                String study = question.object().identity().studyInstanceUid();
                if (study.equals(InventedObjects.studyUid(RECORDS + 1))) {
                    last.countDown();
                }
                return ToldArchive.THERE;
            };
            Destination slow = Destinations.dicom(
                    SLOW, records.archive, new Requestor("PLUMBLINE", PATIENT), liar.peer(), ProofBy.GET);
            int threads = Thread.activeCount();
            try (Dispatcher dispatcher = Dispatcher.start(
                    records.archive,
                    List.of(slow, quick.destination()),
                    new Dispatcher.Given(FiledRecords.CLOCK, System::nanoTime, () -> 0.5, () -> "2.25.1"))) {
                assertThat(seen.await(60, TimeUnit.SECONDS)).isTrue();
                records.file(RECORDS + 1); // when it is looked for, everything before it is kept
                dispatcher.wake();
                assertThat(last.await(60, TimeUnit.SECONDS)).isTrue();
                assertThat(records.count(State.PROVED)).isGreaterThanOrEqualTo(RECORDS);
                assertThat(Thread.activeCount()).isLessThanOrEqualTo(threads + 4);
                assertThat(liar.received()).as("one at a time, then it rests").isBetween(1, 6);
            }
            assertThat(records.store().dispatches().list(Optional.empty(), 3 * RECORDS, 0).stream()
                            .filter(each -> each.addressed().destination().equals(SLOW))
                            .map(Dispatch::state))
                    .containsOnly(State.QUEUED);
        }
    }
}
