// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.archive.Dispatch.State;
import dev.plumbline.archive.InventedObjects;
import java.nio.file.Path;
import java.time.Duration;
import java.util.HashSet;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A record that the archive can never take, though what it says blames the archive: only its own study waits for it. An
 * archive that takes nothing is left alone all the same. TRUST 3.1, 3.2, T6.
 */
class PoisonRecordTest {
    private static final Outcome NOT_NOW = Outcome.of(Verdict.DESTINATION_LATER, "A700", "refused: out of resources");

    @TempDir
    Path data;

    /** Refuses every object of study 1 as a busy archive would. */
    private static ToldArchive cannotTakeTheFirst() {
        ToldArchive archive = new ToldArchive();
        archive.sending = object ->
                object.identity().studyInstanceUid().equals(InventedObjects.studyUid(1)) ? NOT_NOW : ToldArchive.TAKEN;
        return archive;
    }

    private static void carry(FiledRecords records, Courier courier, Duration time) {
        long end = records.nanoTime.get() + time.toNanos();
        while (records.nanoTime.get() < end) {
            records.nanoTime.addAndGet(courier.round().toNanos());
        }
    }

    @Test
    void oneRecordThatTheArchiveCannotTakeStopsNoOther() throws Exception {
        try (FiledRecords records = new FiledRecords(data)) {
            for (int study = 1; study <= 5; study++) {
                records.file(study);
            }
            Courier courier = cannotTakeTheFirst().courier(records);
            carry(records, courier, Duration.ofSeconds(20));
            assertThat(records.count(State.PROVED)).isEqualTo(4);
            assertThat(records.dispatch(1).state()).isEqualTo(State.QUEUED);
            assertThat(records.dispatch(1).lastAnswer().code()).isEqualTo("A700");
        }
    }

    @Test
    void aNewRecordGoesWithinSecondsBesideOneThatFailedForADay() throws Exception {
        try (FiledRecords records = new FiledRecords(data)) {
            records.file(1);
            ToldArchive archive = cannotTakeTheFirst();
            Courier courier = archive.courier(records);
            carry(records, courier, Duration.ofHours(24));
            assertThat(archive.sent).as("by itself it rests 15 minutes").hasSizeBetween(90, 110);
            records.file(2);
            carry(records, courier, Duration.ofSeconds(10));
            assertThat(records.dispatch(2).state()).isEqualTo(State.PROVED);
        }
    }

    @Test
    void theRecordsOfItsStudyKeepTheirOrder() throws Exception {
        try (FiledRecords records = new FiledRecords(data)) {
            records.file(1);
            records.file(1, 2);
            records.file(2);
            ToldArchive archive = cannotTakeTheFirst();
            Courier courier = archive.courier(records);
            carry(records, courier, Duration.ofHours(1));
            assertThat(records.dispatch(2).progress().attempts()).isZero();
            assertThat(records.dispatch(3).state()).isEqualTo(State.PROVED);
            archive.sending = object -> ToldArchive.TAKEN;
            carry(records, courier, Duration.ofHours(1));
            assertThat(records.count(State.PROVED)).isEqualTo(3);
            List<String> last = archive.sent.subList(archive.sent.size() - 4, archive.sent.size()).stream()
                    .map(object -> object.sopInstanceUid())
                    .toList();
            assertThat(last)
                    .containsExactly(
                            InventedObjects.instanceUid(1, 1, 1),
                            InventedObjects.instanceUid(1, 2, 2),
                            InventedObjects.instanceUid(1, 3, 1),
                            InventedObjects.instanceUid(1, 4, 2));
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 40})
    void anArchiveThatIsDownIsTriedOnceIn15Minutes(int waiting) throws Exception {
        try (FiledRecords records = new FiledRecords(data)) {
            for (int study = 1; study <= waiting; study++) {
                records.file(study);
            }
            ToldArchive archive = new ToldArchive();
            archive.sending = object -> NOT_NOW;
            Courier courier = archive.courier(records);
            carry(records, courier, Duration.ofHours(1));
            assertThat(archive.sent).as("while it is found out").hasSizeLessThan(25);
            archive.sent.clear();
            carry(records, courier, Duration.ofHours(7));
            assertThat(archive.sent).as("one probe a rest").hasSizeBetween(26, 30);
            assertThat(new HashSet<>(archive.studies())).hasSize(Math.min(waiting, archive.sent.size()));
            archive.sending = object -> ToldArchive.TAKEN;
            carry(records, courier, Duration.ofMinutes(16));
            assertThat(records.count(State.PROVED)).isEqualTo(waiting);
        }
    }
}
