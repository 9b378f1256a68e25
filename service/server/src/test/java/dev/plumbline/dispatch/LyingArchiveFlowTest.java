// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.archive.Dispatch;
import dev.plumbline.archive.Dispatch.State;
import dev.plumbline.config.ProofBy;
import dev.plumbline.dimse.LiarArchive;
import dev.plumbline.dimse.LiarArchive.Lie;
import dev.plumbline.dimse.Requestor;
import dev.plumbline.dimse.Status;
import dev.plumbline.dimse.Timeouts;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.FieldSource;

/** Archives that answer anything: what becomes of the record is as the outcome table says. TRUST T8. */
class LyingArchiveFlowTest {
    private static final Timeouts QUICK =
            new Timeouts(Duration.ofMillis(200), Duration.ofSeconds(5), Duration.ofSeconds(5), Duration.ofSeconds(1));

    @TempDir
    Path data;

    private Courier courier(FiledRecords records, LiarArchive liar) {
        return new Courier(
                Destinations.dicom(
                        FiledRecords.TO, records.archive, new Requestor("PLUMBLINE", QUICK), liar.peer(), ProofBy.NONE),
                records.archive,
                records.times());
    }

    /** Status, what becomes of the record, how many objects the archive has seen then; both ends of every range. */
    private static final List<String> OUTCOMES = List.of(
            "0000, SENT, 2",
            "B000, SENT, 2",
            "B006, SENT, 2",
            "B007, SENT, 2",
            "B001, SENT, 2",
            "BFFF, SENT, 2",
            "0111, SENT, 2",
            "A700, QUEUED, 1",
            "A7FF, QUEUED, 1",
            "0213, QUEUED, 1",
            "0110, QUEUED, 1",
            "0210, QUEUED, 1",
            "FE00, QUEUED, 1",
            "FF00, QUEUED, 1",
            "FF01, QUEUED, 1",
            "A900, HELD, 1",
            "A9FF, HELD, 1",
            "A000, HELD, 1",
            "AFFF, HELD, 1",
            "C000, HELD, 1",
            "C123, HELD, 1",
            "CFFF, HELD, 1",
            "0112, HELD, 1",
            "0113, HELD, 1",
            "0114, HELD, 1",
            "0115, HELD, 1",
            "0117, HELD, 1",
            "0118, HELD, 1",
            "0119, HELD, 1",
            "0122, HELD, 1",
            "0123, HELD, 1",
            "0124, HELD, 1",
            "0211, HELD, 1",
            "0212, HELD, 1",
            "0FFF, HELD, 1");

    private static int code(String outcome) {
        return Integer.parseInt(outcome.substring(0, 4), 16);
    }

    @Test
    void everyLineOfTheTableOfStatusesIsTried() {
        assertThat(OUTCOMES.stream().map(outcome -> Status.of(code(outcome)))).contains(Status.values());
    }

    @ParameterizedTest
    @FieldSource("OUTCOMES")
    void doesWhatTheStatusAsksFor(String outcome) throws Exception {
        String[] cells = outcome.split(", ");
        doesWhatTheStatusAsksFor(cells[0], State.valueOf(cells[1]), Integer.parseInt(cells[2]));
    }

    private void doesWhatTheStatusAsksFor(String code, State state, int received) throws Exception {
        try (FiledRecords records = new FiledRecords(data);
                LiarArchive liar = new LiarArchive(Lie.STATUS, Integer.parseInt(code, 16))) {
            records.file(1);
            Courier courier = courier(records, liar);
            courier.round();
            courier.rest();
            Dispatch dispatch = records.dispatch();
            assertThat(dispatch.state()).isEqualTo(state);
            assertThat(liar.received())
                    .as("a report never goes before its images")
                    .isEqualTo(received);
            Dispatch.Part first = dispatch.parts().get(0);
            assertThat(first.answer().code()).isEqualTo(code);
            assertThat(first.answer().words()).contains("in its own words");
        }
    }

    @ParameterizedTest
    @EnumSource(
            value = Lie.class,
            names = {"STATUS", "ABORT_AFTER_ANSWER"},
            mode = EnumSource.Mode.EXCLUDE)
    void neverTakesALieForSent(Lie lie) throws Exception {
        try (FiledRecords records = new FiledRecords(data);
                LiarArchive liar = new LiarArchive(lie, 0)) {
            records.file(1);
            Courier courier = courier(records, liar);
            Duration wait = courier.round();
            courier.rest();
            assertThat(records.dispatch().state()).isEqualTo(State.QUEUED);
            assertThat(records.dispatch().lastAnswer().words()).isNotEmpty();
            assertThat(wait).isPositive();
            courier.round();
            assertThat(liar.received()).as("it rests before the next attempt").isEqualTo(1);
            records.nanoTime.addAndGet(wait.toNanos() + 1);
            courier.round();
            courier.rest();
            assertThat(liar.received()).as("and is tried again then").isEqualTo(2);
        }
    }

    @Test
    void sendsTheRestAfterAnAbortThatFollowedAnAnswer() throws Exception {
        try (FiledRecords records = new FiledRecords(data);
                LiarArchive liar = new LiarArchive(Lie.ABORT_AFTER_ANSWER, 0)) {
            records.file(1);
            Courier courier = courier(records, liar);
            for (int i = 0; i < 4 && records.dispatch().state() == State.QUEUED; i++) {
                records.nanoTime.addAndGet(Backoff.LONGEST.toNanos() * 2);
                courier.round();
            }
            courier.rest();
            assertThat(records.dispatch().state()).isEqualTo(State.SENT);
        }
    }
}
