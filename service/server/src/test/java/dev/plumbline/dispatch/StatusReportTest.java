// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.archive.Dispatch.State;
import dev.plumbline.archive.Findings;
import dev.plumbline.problem.Refusal;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is said of records that wait, whatever their destination. TRUST 6. */
class StatusReportTest {
    private static final Outcome DOWN = Outcome.of(Verdict.DESTINATION_LATER, "", "Nothing listens at pacs:104.");

    @TempDir
    Path data;

    private static Destination without(String name, ToldArchive archive) {
        return new Destination(name, false, () -> archive);
    }

    private static StatusReport report(FiledRecords records, List<Destination> destinations, Duration later) {
        Clock clock = Clock.offset(FiledRecords.CLOCK, later);
        return new StatusReport(
                DispatchDesk.closed(records.store(), destinations, clock), 1L << 30, Findings.NONE, List.of());
    }

    @Test
    void aRecordThatIsQueuedWhereNoProofIsOfferedIsTheOldest() throws Exception {
        try (FiledRecords records = new FiledRecords(data)) {
            records.file(1);
            records.file(2);
            ToldArchive archive = new ToldArchive();
            archive.sending = object -> DOWN;
            Destination pacs = without(FiledRecords.TO, archive);
            Courier courier = new Courier(pacs, records.archive, records.times());
            courier.round();
            StatusReport report = report(records, List.of(pacs), Duration.ofDays(3));
            assertThat(report.text())
                    .contains(
                            "signed 3 days ago: dispatch 1 to pacs, queued", "Nothing listens", "2 records are queued.")
                    .doesNotContain("No record waits");
            assertThat(report.json().path("oldestUnproved").path("id").asInt()).isEqualTo(1);
            assertThat(report.json().path("personNeeded").asBoolean())
                    .as("it goes on by itself")
                    .isFalse();
            archive.sending = object -> ToldArchive.TAKEN;
            records.nanoTime.addAndGet(Backoff.LONGEST.toNanos());
            courier.round();
            assertThat(records.count(State.SENT)).isEqualTo(2);
            assertThat(report(records, List.of(pacs), Duration.ofDays(3)).text())
                    .contains("No record waits to be proved.")
                    .doesNotContain("queued");
        }
    }

    @Test
    void recordsForAPeerThatLeftTheConfigurationAreNamed() throws Exception {
        try (FiledRecords records = new FiledRecords(data, List.of("gone", FiledRecords.TO))) {
            records.file(1);
            Destination pacs = without(FiledRecords.TO, new ToldArchive());
            new Courier(pacs, records.archive, records.times()).round();
            StatusReport report = report(records, List.of(pacs), Duration.ofHours(1));
            assertThat(report.text())
                    .contains("1 record is queued.", "1 record goes to gone, which is no peer any more")
                    .contains("dispatch 1 to gone, queued");
            ObjectNode json = report.json();
            assertThat(json.path("withoutPeer").path("gone").asInt()).isEqualTo(1);
            assertThat(json.path("personNeeded").asBoolean()).isTrue();
            records.store().dispatches().release(1, FiledRecords.CLOCK.instant());
            assertThat(report(records, List.of(pacs), Duration.ofHours(1))
                            .json()
                            .path("personNeeded")
                            .asBoolean())
                    .isFalse();
        }
    }

    @Test
    void aRetryTowardsAPeerThatLeftTheConfigurationIsRefusedInWords() throws Exception {
        try (FiledRecords records = new FiledRecords(data, List.of("gone"))) {
            records.file(1);
            DispatchDesk desk = DispatchDesk.closed(
                    records.store(), List.of(without(FiledRecords.TO, new ToldArchive())), FiledRecords.CLOCK);
            assertThatThrownBy(() -> desk.retry(1))
                    .isInstanceOf(Refusal.class)
                    .hasMessageContaining("It goes to gone, which is no peer any more")
                    .hasMessageContaining("release this one");
            assertThat(desk.release(1).released()).isPresent();
        }
    }

    @Test
    void recordsThatAreQueuedWithoutAnyPeerAreSaid() throws Exception {
        try (FiledRecords records = new FiledRecords(data)) {
            records.file(1);
            StatusReport report = report(records, List.of(), Duration.ofHours(1));
            assertThat(report.text())
                    .contains("1 record is queued.", "1 record goes to pacs")
                    .doesNotContain("no other archive is configured");
            assertThat(report.json().path("personNeeded").asBoolean()).isTrue();
        }
    }

    @Test
    void theAgeCountsFromTheSignature() throws Exception {
        try (FiledRecords records = new FiledRecords(data)) {
            records.fileOldCase(1, Duration.ofDays(200));
            assertThat(report(records, List.of(), Duration.ofMinutes(5)).text()).contains("was signed 5 minutes ago");
        }
    }
}
