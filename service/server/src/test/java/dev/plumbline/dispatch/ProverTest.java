// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.archive.Dispatch;
import dev.plumbline.archive.Dispatch.State;
import dev.plumbline.archive.Dispatch.Taken;
import dev.plumbline.dispatch.Proof.Finding;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What becomes of a sent record by what is found of it, and how often it is looked for. TRUST 3.2, 3.3. */
class ProverTest {
    private static final Proof NOT_OFFERED = Proof.of(Finding.NOT_OFFERED, "The peer takes no C-GET.");
    private static final Proof MISSING = Proof.of(Finding.MISSING, "The archive does not hand it out.");
    private static final Proof DIFFERENT = Proof.of(Finding.DIFFERENT, "Differs: PatientName.");

    @TempDir
    Path data;

    private static void carry(FiledRecords records, Courier courier, Duration time) {
        long end = records.nanoTime.get() + time.toNanos();
        while (records.nanoTime.get() < end) {
            records.nanoTime.addAndGet(courier.round().toNanos());
        }
    }

    @Test
    void whereNoProofIsOfferedNobodyIsAskedForEachRecordAgainAndAgain() throws Exception {
        try (FiledRecords records = new FiledRecords(data)) {
            for (int study = 1; study <= 30; study++) {
                records.file(study);
            }
            ToldArchive archive = new ToldArchive();
            archive.proving = question -> NOT_OFFERED;
            Courier courier = archive.courier(records);
            carry(records, courier, Duration.ofHours(23));
            assertThat(records.count(State.SENT)).isEqualTo(30);
            assertThat(archive.questions).hasSize(3);
            assertThat(records.dispatch(1).lastAnswer().words())
                    .as("what it said when it was sent")
                    .isEqualTo("success");
            archive.proving = question -> ToldArchive.THERE;
            carry(records, courier, Duration.ofHours(26));
            assertThat(records.count(State.PROVED)).as("asked again once a day").isEqualTo(30);
        }
    }

    @Test
    void oneObjectThatIsNotHandedBackKeepsNoOtherFromBeingProved() throws Exception {
        try (FiledRecords records = new FiledRecords(data)) {
            for (int study = 1; study <= 10; study++) {
                records.file(study);
            }
            ToldArchive archive = new ToldArchive();
            String first = records.dispatch(1).addressed().studyInstanceUid();
            archive.proving = question ->
                    question.object().identity().studyInstanceUid().equals(first) ? NOT_OFFERED : ToldArchive.THERE;
            carry(records, archive.courier(records), Duration.ofSeconds(10));
            assertThat(records.count(State.PROVED)).isEqualTo(9);
            assertThat(records.dispatch(1).state()).isEqualTo(State.SENT);
        }
    }

    @Test
    void nothingIsAskedWhereNoProofIsConfigured() throws Exception {
        try (FiledRecords records = new FiledRecords(data)) {
            records.file(1);
            ToldArchive archive = new ToldArchive();
            Courier courier = new Courier(
                    new Destination(FiledRecords.TO, false, () -> archive), records.archive, records.times());
            carry(records, courier, Duration.ofHours(48));
            assertThat(records.dispatch().state()).isEqualTo(State.SENT);
            assertThat(archive.questions).isEmpty();
        }
    }

    @Test
    void whatIsMissedOnceIsLookedForAgainBeforeItIsSentAgain() throws Exception {
        try (FiledRecords records = new FiledRecords(data)) {
            records.file(1);
            ToldArchive archive = new ToldArchive();
            archive.proving = question -> archive.questions.size() == 1 ? MISSING : ToldArchive.THERE;
            Courier courier = archive.courier(records);
            assertThat(courier.round()).isZero();
            assertThat(records.dispatch().state()).isEqualTo(State.SENT);
            carry(records, courier, Duration.ofSeconds(6));
            assertThat(records.dispatch().state()).isEqualTo(State.PROVED);
            assertThat(archive.sent).hasSize(2);
        }
    }

    @Test
    void whatIsMissedForEverIsSentAgainMoreAndMoreSeldom() throws Exception {
        try (FiledRecords records = new FiledRecords(data)) {
            records.file(1);
            ToldArchive archive = new ToldArchive();
            archive.proving = question -> MISSING;
            Courier courier = archive.courier(records);
            carry(records, courier, Duration.ofHours(1));
            assertThat(archive.sent.size() / 2).isBetween(3, 9);
            archive.sent.clear();
            carry(records, courier, Duration.ofHours(23));
            assertThat(archive.sent.size()).as("half an hour each").isBetween(40, 50);
        }
    }

    @Test
    void failingProofsDoNotHoldUpWhatIsNew() throws Exception {
        try (FiledRecords records = new FiledRecords(data)) {
            records.file(1);
            ToldArchive archive = new ToldArchive();
            archive.proving = question -> Proof.of(Finding.DESTINATION_LATER, "The peer aborted the association.");
            Courier courier = archive.courier(records);
            carry(records, courier, Duration.ofHours(5));
            records.file(2);
            courier.round();
            assertThat(records.dispatch(2).state()).isEqualTo(State.SENT);
            assertThat(records.dispatch(1).lastAnswer().words()).contains("aborted");
        }
    }

    @Test
    void anArchiveThatTakesNothingIsNotLookedIntoEither() throws Exception {
        try (FiledRecords records = new FiledRecords(data)) {
            records.file(1);
            ToldArchive archive = new ToldArchive();
            archive.proving = question -> Proof.of(Finding.LATER, "busy");
            Courier courier = archive.courier(records);
            courier.round();
            records.file(2);
            archive.sending = object -> Outcome.of(Verdict.DESTINATION_LATER, "", "Nothing listens.");
            archive.questions.clear();
            records.nanoTime.addAndGet(Duration.ofMinutes(1).toNanos());
            courier.round();
            assertThat(archive.questions).isEmpty();
        }
    }

    @Test
    void aDifferenceAfterItWasTakenIsAnAlterationThatStandsInTheRecord() throws Exception {
        try (FiledRecords records = new FiledRecords(data)) {
            records.file(1);
            ToldArchive archive = new ToldArchive();
            archive.sending = object -> Outcome.of(Verdict.SENT_ALTERED, "B000", "coercion of data elements");
            archive.proving = question -> {
                assertThat(question.doubtful()).isTrue();
                return DIFFERENT;
            };
            carry(records, archive.courier(records), Duration.ofHours(48));
            Dispatch dispatch = records.dispatch();
            assertThat(dispatch.state()).isEqualTo(State.SENT);
            assertThat(dispatch.isAltered()).isTrue();
            assertThat(dispatch.lastAnswer().words()).contains("PatientName");
            assertThat(archive.questions).as("each object once").hasSize(2);
            assertThat(records.store().dispatches().remarks().altered()).isEqualTo(1);
            assertThat(records.store().dispatches().oldestUnproved(List.of(FiledRecords.TO)))
                    .as("there is nothing to wait for")
                    .isEmpty();
        }
    }

    @Test
    void anotherObjectThatWasThereBeforeIsHeld() throws Exception {
        try (FiledRecords records = new FiledRecords(data)) {
            records.file(1);
            ToldArchive archive = new ToldArchive();
            archive.sending = object -> Outcome.of(Verdict.SENT_BEFORE, "0111", "duplicate SOP instance");
            archive.proving = question -> DIFFERENT;
            carry(records, archive.courier(records), Duration.ofHours(1));
            assertThat(records.dispatch().state()).isEqualTo(State.HELD);
        }
    }

    @Test
    void whatTheArchiveSaidItAlteredAndHandsBackAsItWasIsProved() throws Exception {
        try (FiledRecords records = new FiledRecords(data)) {
            records.file(1);
            ToldArchive archive = new ToldArchive();
            archive.sending = object -> Outcome.of(Verdict.SENT_ALTERED, "B000", "coercion of data elements");
            carry(records, archive.courier(records), Duration.ofSeconds(5));
            assertThat(records.dispatch().state()).isEqualTo(State.PROVED);
            assertThat(records.dispatch().parts())
                    .extracting(Dispatch.Part::taken)
                    .containsOnly(Taken.AS_SENT);
        }
    }

    @Test
    void anObjectWhoseOwnFileIsDamagedIsHeld() throws Exception {
        try (FiledRecords records = new FiledRecords(data)) {
            records.file(1);
            ToldArchive archive = new ToldArchive();
            archive.proving = question -> Proof.of(Finding.LATER, "busy");
            Courier courier = archive.courier(records);
            courier.round();
            Path file = records.archive.file(archive.sent.get(0));
            Files.write(file, new byte[] {1, 2, 3});
            carry(records, courier, Duration.ofMinutes(1));
            assertThat(records.dispatch().state()).isEqualTo(State.HELD);
            assertThat(records.dispatch().lastAnswer().words()).contains("run doctor");
        }
    }
}
