// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.archive.Dispatch.State;
import dev.plumbline.archive.HeldObject;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.Period;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.temporal.TemporalAmount;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The wall clock is set while records wait, and waits that nobody needs any more: nothing stalls, nothing spins. T10. */
class ClockJumpTest {
    @TempDir
    Path data;

    /** A clock that somebody sets. */
    private static final class SetClock extends Clock {
        private Instant now = Instant.parse("2026-03-29T00:59:59Z"); // a second before summer time in Europe

        void set(TemporalAmount by) {
            now = now.atOffset(ZoneOffset.UTC).plus(by).toInstant();
        }

        @Override
        public ZoneId getZone() {
            return ZoneId.of("Europe/Paris");
        }

        @Override
        public Clock withZone(ZoneId zone) {
            throw new UnsupportedOperationException();
        }

        @Override
        public Instant instant() {
            return now;
        }
    }

    /** An archive that fails with every object, or with none. */
    private static final class Moody implements Carrier {
        private final AtomicInteger sends = new AtomicInteger();
        private Verdict verdict = Verdict.DESTINATION_LATER;

        @Override
        public Outcome send(HeldObject object) {
            sends.incrementAndGet();
            return Outcome.of(verdict, "", "as the test says");
        }

        @Override
        public Proof prove(Question question) {
            return Proof.of(Proof.Finding.PROVED, "there");
        }

        @Override
        public void rest() {
            // holds nothing
        }
    }

    private static Courier courier(FiledRecords records, Moody archive, Clock clock) {
        return new Courier(
                new Destination(FiledRecords.TO, true, () -> archive),
                records.archive,
                new Courier.Times(clock, records.nanoTime::get, new Backoff(() -> 0.5), () -> "2.25.1"));
    }

    private static List<TemporalAmount> jumps() {
        return List.of(
                Duration.ofHours(-1),
                Duration.ofHours(1),
                Duration.ofSeconds(2),
                Period.ofYears(10),
                Period.ofYears(-20),
                Duration.ofDays(3650));
    }

    @ParameterizedTest
    @ValueSource(strings = {"DESTINATION_LATER", "RECORD_LATER"})
    void waitsAsLongAsWithoutAJump(Verdict verdict) throws Exception {
        try (FiledRecords records = new FiledRecords(data)) {
            records.file(1);
            SetClock clock = new SetClock();
            Moody archive = new Moody();
            archive.verdict = verdict;
            Courier courier = courier(records, archive, clock);
            int failures = 0;
            for (TemporalAmount jump : jumps()) {
                Duration wait = courier.round();
                failures++;
                assertThat(wait).isEqualTo(new Backoff(() -> 0.5).after(failures));
                clock.set(jump);
                assertThat(courier.round()).as("nothing is tried early").isEqualTo(wait);
                assertThat(archive.sends).hasValue(failures);
                records.nanoTime.addAndGet(wait.toNanos());
            }
            archive.verdict = Verdict.SENT;
            courier.round();
            courier.round();
            assertThat(records.dispatch().state()).isEqualTo(State.PROVED);
            assertThat(archive.sends).hasValue(failures + 2);
        }
    }

    @Test
    void aWaitThatIsOverForARecordThatWasReleasedIsNoReasonToSpin() throws Exception {
        try (FiledRecords records = new FiledRecords(data)) {
            records.file(1);
            Moody archive = new Moody();
            archive.verdict = Verdict.RECORD_LATER;
            Courier courier = courier(records, archive, FiledRecords.CLOCK);
            Duration wait = courier.round();
            assertThat(wait).isEqualTo(Backoff.FIRST);
            records.store().dispatches().release(1, FiledRecords.CLOCK.instant());
            records.nanoTime.addAndGet(wait.toNanos() * 2);
            assertThat(courier.round()).isEqualTo(Backoff.LONGEST);
            assertThat(archive.sends).hasValue(1);
        }
    }
}
