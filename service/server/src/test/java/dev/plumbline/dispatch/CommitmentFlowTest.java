// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.archive.Dispatch;
import dev.plumbline.archive.Dispatch.Part;
import dev.plumbline.archive.Dispatch.State;
import dev.plumbline.archive.Findings;
import dev.plumbline.config.ProofBy;
import dev.plumbline.dicom.DataSet;
import dev.plumbline.dicom.Identifiers;
import dev.plumbline.dicom.Tag;
import dev.plumbline.dicom.TransferSyntax;
import dev.plumbline.dimse.CommittingPeer;
import dev.plumbline.dimse.CommittingPeer.Manner;
import dev.plumbline.dimse.Peer;
import dev.plumbline.dimse.Reply;
import dev.plumbline.dimse.Requestor;
import dev.plumbline.dimse.Services;
import dev.plumbline.dimse.Status;
import dev.plumbline.dimse.Timeouts;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Archives that are asked to commit, when and how they report. TRUST 3.3; DICOM PS3.4, J.3. */
class CommitmentFlowTest {
    private static final Timeouts QUICK =
            new Timeouts(Duration.ofMillis(200), Duration.ofSeconds(5), Duration.ofSeconds(5), Duration.ofSeconds(5));
    private static final TransferSyntax SYNTAX =
            TransferSyntax.of("1.2.840.10008.1.2.1").orElseThrow();

    @TempDir
    Path data;

    private static Courier courier(FiledRecords records, Peer peer) {
        return courier(records, peer, FiledRecords.CLOCK);
    }

    private static Courier courier(FiledRecords records, Peer peer, Clock clock) {
        Courier.Times times = records.times();
        return new Courier(
                Destinations.dicom(
                        FiledRecords.TO, records.archive, new Requestor("PLUMBLINE", QUICK), peer, ProofBy.COMMITMENT),
                records.archive,
                new Courier.Times(clock, times.nanoTime(), times.backoff(), times.uids()));
    }

    private static void pass(FiledRecords records, Duration time) {
        records.nanoTime.addAndGet(time.toNanos() + 1);
    }

    private static Reply report(FiledRecords records, int event, DataSet information) {
        return new Inbox(records.archive, FiledRecords.CLOCK)
                .commitment(new Services.CommitmentReport(
                        event, Identifiers.write(information, SYNTAX), "1.2.840.10008.1.2.1"));
    }

    private static DataSet reference(Part part) {
        return new DataSet()
                .put(Tag.REFERENCED_SOP_CLASS_UID, "1.2.840.10008.5.1.4.1.1.6.1")
                .put(Tag.REFERENCED_SOP_INSTANCE_UID, part.sopInstanceUid());
    }

    private static DataSet committed(Part part, String transaction) {
        return new DataSet()
                .put(Tag.TRANSACTION_UID, transaction)
                .put(Tag.REFERENCED_SOP_SEQUENCE, List.of(reference(part)));
    }

    private static DataSet failed(Part part, int reason) {
        return new DataSet()
                .put(Tag.TRANSACTION_UID, transaction(part))
                .put(Tag.FAILED_SOP_SEQUENCE, List.of(reference(part).put(Tag.FAILURE_REASON, reason)));
    }

    private static String transaction(Part part) {
        return part.asked().transactionUid().orElseThrow();
    }

    @ParameterizedTest
    @EnumSource(
            value = Manner.class,
            names = {"BEFORE_THE_ANSWER", "AFTER_THE_ANSWER"})
    void aReportOnOurOwnAssociationIsTaken(Manner manner) throws Exception {
        try (FiledRecords records = new FiledRecords(data);
                CommittingPeer peer = new CommittingPeer(manner, false)) {
            records.file(1);
            Courier courier = courier(records, peer.peer());
            courier.round();
            courier.rest();
            assertThat(records.dispatch().state()).isEqualTo(State.PROVED);
            assertThat(peer.requests).hasSize(2);
            assertThat(peer.answers).containsExactly(0, 0);
            assertThat(courier.round()).as("nothing is left to do").isEqualTo(Backoff.LONGEST);
        }
    }

    @Test
    void whatIsReportedAsMissingOnOurOwnAssociationIsSentAgainAtOnce() throws Exception {
        try (FiledRecords records = new FiledRecords(data);
                CommittingPeer peer = new CommittingPeer(Manner.MISSES_AT_FIRST, false)) {
            records.file(1);
            Courier courier = courier(records, peer.peer());
            for (int rounds = 0; rounds < 3; rounds++) { // no time passes
                courier.round();
                courier.rest(); // and hears what is still reported
            }
            assertThat(peer.answers).as("both reports are taken").containsExactly(0, 0);
            assertThat(peer.stored.availablePermits()).as("both objects, twice").isEqualTo(4);
            assertThat(records.dispatch().state()).isEqualTo(State.SENT);
            assertThat(peer.requests).as("it is asked again at its time").hasSize(2);
        }
    }

    @ParameterizedTest
    @EnumSource(
            value = Manner.class,
            names = {"NOT_HERE", "FAILS", "ABORTS"})
    void isAskedFiveTimesOverADayThenReadBackThenUnconfirmed(Manner manner) throws Exception {
        try (FiledRecords records = new FiledRecords(data);
                CommittingPeer peer = new CommittingPeer(manner, false)) {
            records.file(1);
            Courier courier = courier(records, peer.peer());
            List<Integer> askedBy = new ArrayList<>();
            for (int minute = 0; minute < 26 * 60; minute++) {
                while (courier.round().isZero()) {
                    assertThat(peer.requests.size()).isLessThan(11);
                }
                if (peer.requests.size() > askedBy.size() * 2) {
                    askedBy.add(minute);
                }
                pass(records, Duration.ofMinutes(1));
            }
            courier.rest();
            assertThat(askedBy).containsExactly(0, 10, 60, 240, 720);
            Dispatch dispatch = records.dispatch();
            assertThat(dispatch.state()).isEqualTo(State.SENT);
            assertThat(dispatch.isUnconfirmed()).isTrue();
            assertThat(dispatch.lastAnswer().words()).contains("hands no objects back");
            assertThat(new HashSet<>(transactions(peer)))
                    .as("a UID of its own for each request")
                    .hasSize(10);
            Destination destination = new Destination(FiledRecords.TO, true, ToldArchive::new);
            DispatchDesk desk = DispatchDesk.closed(records.store(), List.of(destination), FiledRecords.CLOCK);
            StatusReport report = new StatusReport(desk, 1L << 30, Findings.NONE, List.of());
            assertThat(report.text()).contains("1 record is sent and unconfirmed");
            assertThat(report.json().path("personNeeded").asBoolean()).isTrue();
            desk.retry(1);
            courier.hurry(1);
            courier.round();
            courier.rest();
            assertThat(peer.requests).as("an operator may have it asked anew").hasSize(12);
        }
    }

    private static List<String> transactions(CommittingPeer peer) {
        return peer.requests.stream()
                .map(each -> Identifiers.read(each, SYNTAX)
                        .string(Tag.TRANSACTION_UID)
                        .orElseThrow())
                .toList();
    }

    @Test
    void afterADayItIsReadBackWhereThatIsOffered() throws Exception {
        try (FiledRecords records = new FiledRecords(data);
                CommittingPeer peer = new CommittingPeer(Manner.NOT_HERE, true)) {
            records.file(1);
            Courier courier = courier(records, peer.peer());
            courier.round();
            for (int times = 1; times <= CommitmentSchedule.MOST; times++) {
                assertThat(peer.retrievals).isEmpty();
                pass(records, CommitmentSchedule.after(times));
                courier.round();
            }
            courier.rest();
            assertThat(peer.retrievals).hasSize(1);
            assertThat(records.dispatch().lastAnswer().words()).contains("does not hand it out");
        }
    }

    @Test
    void aLateReportOnAnEarlierTransactionCounts() throws Exception {
        try (FiledRecords records = new FiledRecords(data);
                CommittingPeer peer = new CommittingPeer(Manner.NOT_HERE, false)) {
            records.file(1);
            Courier courier = courier(records, peer.peer());
            courier.round();
            List<Part> first = records.dispatch().parts();
            pass(records, CommitmentSchedule.after(1));
            courier.round();
            courier.rest();
            for (Part part : first) {
                assertThat(report(records, 1, committed(part, transaction(part)))
                                .isSuccess())
                        .isTrue();
            }
            assertThat(records.dispatch().parts())
                    .extracting(part -> transaction(part))
                    .as("others were begun meanwhile")
                    .doesNotContain(transaction(first.get(0)), transaction(first.get(1)));
            assertThat(records.dispatch().state()).isEqualTo(State.PROVED);
        }
    }

    @Test
    void aStartAsksNothingBeforeItsTimeAndForgetsNoTransaction() throws Exception {
        try (FiledRecords records = new FiledRecords(data);
                CommittingPeer peer = new CommittingPeer(Manner.NOT_HERE, false)) {
            records.file(1);
            courier(records, peer.peer()).round();
            Part part = records.dispatch().parts().get(0);
            Clock later = Clock.offset(FiledRecords.CLOCK, Duration.ofMinutes(4));
            Courier second = courier(records, peer.peer(), later);
            second.round();
            assertThat(peer.requests).hasSize(2);
            assertThat(second.round()).isEqualTo(Duration.ofMinutes(6));
            pass(records, Duration.ofMinutes(6));
            second.round();
            second.rest();
            assertThat(peer.requests).hasSize(4);
            assertThat(report(records, 1, committed(part, transaction(part))).isSuccess())
                    .isTrue();
        }
    }

    @Test
    void aClockThatWasSetBackCostsOneWaitAtMost() {
        Instant now = FiledRecords.CLOCK.instant();
        assertThat(CommitmentSchedule.left(1, now.plus(Duration.ofDays(3650)), now))
                .isEqualTo(CommitmentSchedule.after(1));
        assertThat(CommitmentSchedule.left(5, now.minus(Duration.ofDays(3650)), now))
                .isZero();
    }

    /** Every failure reason of PS3.3, C.14.1.1, and what becomes of the object. */
    @ParameterizedTest
    @CsvSource({"0110, SENT", "0112, QUEUED", "0213, SENT", "0122, SENT", "0119, SENT", "0131, SENT"})
    void everyFailureReasonIsKeptAndOnlyAMissingObjectIsSentAgain(String reason, State then) throws Exception {
        try (FiledRecords records = new FiledRecords(data);
                CommittingPeer peer = new CommittingPeer(Manner.NOT_HERE, false)) {
            records.file(1);
            Courier courier = courier(records, peer.peer());
            courier.round();
            Part part = records.dispatch().parts().get(0);
            assertThat(report(records, 2, failed(part, Integer.parseInt(reason, 16)))
                            .isSuccess())
                    .isTrue();
            Part now = records.dispatch().parts().get(0);
            assertThat(now.state()).isEqualTo(then);
            assertThat(now.answer().code()).isEqualTo(reason);
            courier.round();
            courier.rest();
            assertThat(records.dispatch().parts().get(0).state()).isEqualTo(State.SENT);
            assertThat(peer.requests)
                    .as("it is asked again at its time, not at once")
                    .hasSize(2);
        }
    }

    /** The courier waits ten minutes for reports; one that tells of a missing object does not have to wait with it. */
    @Test
    void whatIsReportedAsMissingAtOurDoorIsSentAgainAtOnce() throws Exception {
        try (FiledRecords records = new FiledRecords(data);
                CommittingPeer peer = new CommittingPeer(Manner.NOT_HERE, false)) {
            records.file(1);
            Destination destination = Destinations.dicom(
                    FiledRecords.TO,
                    records.archive,
                    new Requestor("PLUMBLINE", QUICK),
                    peer.peer(),
                    ProofBy.COMMITMENT);
            Courier.Times times = records.times();
            try (Dispatcher dispatcher = Dispatcher.start(
                    records.archive,
                    List.of(destination),
                    new Dispatcher.Given(FiledRecords.CLOCK, times.nanoTime(), () -> 0.5, times.uids()))) {
                records.queued = dispatcher::wake;
                assertThat(peer.stored.tryAcquire(2, 30, TimeUnit.SECONDS)).isTrue();
                assertThat(peer.asked.tryAcquire(2, 30, TimeUnit.SECONDS)).isTrue();
                Part part = records.dispatch().parts().get(0);
                assertThat(report(records, 2, failed(part, 0x0112)).isSuccess()).isTrue();
                assertThat(peer.stored.tryAcquire(30, TimeUnit.SECONDS)).isTrue();
                assertThat(peer.stored.availablePermits()).as("no other object").isZero();
                assertThat(peer.asked.availablePermits())
                        .as("it is asked again at its time")
                        .isZero();
            }
        }
    }

    @Test
    void aFailureInATransactionThatIsOverChangesNothing() throws Exception {
        try (FiledRecords records = new FiledRecords(data);
                CommittingPeer peer = new CommittingPeer(Manner.NOT_HERE, false)) {
            records.file(1);
            Courier courier = courier(records, peer.peer());
            courier.round();
            Part first = records.dispatch().parts().get(0);
            pass(records, CommitmentSchedule.after(1));
            courier.round();
            courier.rest();
            assertThat(report(records, 2, failed(first, 0x0112)).isSuccess()).isTrue();
            assertThat(records.dispatch().parts().get(0).state()).isEqualTo(State.SENT);
        }
    }

    @Test
    void aTransactionThatNobodyBeganIsRefused() throws Exception {
        try (FiledRecords records = new FiledRecords(data)) {
            records.file(1);
            Reply reply =
                    report(records, 1, committed(records.dispatch().parts().get(0), "2.25.4711"));
            assertThat(Status.of(reply.status())).isEqualTo(Status.INVALID_ARGUMENT);
            assertThat(records.dispatch().state()).isEqualTo(State.QUEUED);
        }
    }

    @Test
    void aReportOnTheWholeThatNamesFailuresIsContradicted() throws Exception {
        try (FiledRecords records = new FiledRecords(data);
                CommittingPeer peer = new CommittingPeer(Manner.NOT_HERE, false)) {
            records.file(1);
            Courier courier = courier(records, peer.peer());
            courier.round();
            courier.rest();
            Part part = records.dispatch().parts().get(0);
            Reply reply = report(records, 1, failed(part, 0x0110));
            assertThat(Status.of(reply.status())).isEqualTo(Status.INVALID_ARGUMENT);
            assertThat(records.dispatch().parts().get(0).state()).isEqualTo(State.SENT);
        }
    }
}
