// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import dev.plumbline.archive.Dispatch.State;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A web archive that begins an answer and does not end it: the courier goes on all the same. TRUST 3.2, T7. */
class StalledWebArchiveFlowTest {
    private static final Duration RESPONSE = Duration.ofMillis(700);
    private static final Duration PATIENCE = Duration.ofSeconds(30);

    @TempDir
    Path data;

    /** How the answer goes on after its headers. */
    private enum Way {
        STOPS,
        DRIPS,
        /** Without a length, and a byte now and then. */
        DRIPS_WITHOUT_END
    }

    private static void begin(Way way, ToldWebArchive archive, OutputStream out) throws IOException {
        if (way == Way.DRIPS_WITHOUT_END) {
            ToldWebArchive.answer(out, "200 OK", "Content-Type: application/dicom+json");
        } else {
            ToldWebArchive.answer(out, "200 OK", "Content-Type: application/dicom", "Content-Length: 100000");
        }
        while (!archive.isOver()) {
            if (way != Way.STOPS) {
                out.write(' ');
                out.flush();
            }
            archive.pause(50);
        }
    }

    private static Courier courier(FiledRecords records, ToldWebArchive archive) {
        return new Courier(
                Destinations.web(
                        FiledRecords.TO, records.archive, archive.peer(Optional.empty(), RESPONSE), FiledRecords.CLOCK),
                records.archive,
                records.times());
    }

    @ParameterizedTest
    @EnumSource(Way.class)
    void anAnswerThatDoesNotEndIsNone(Way way) throws Exception {
        ToldWebArchive[] self = new ToldWebArchive[1];
        try (FiledRecords records = new FiledRecords(data);
                ToldWebArchive archive = new ToldWebArchive((asked, out) -> begin(way, self[0], out))) {
            self[0] = archive;
            records.file(1);
            Courier courier = courier(records, archive);
            assertTimeoutPreemptively(PATIENCE, courier::round);
            assertThat(records.dispatch().state()).isEqualTo(State.QUEUED);
            assertThat(records.dispatch().lastAnswer().words()).contains("stopped in the middle of its answer");
        }
    }

    @ParameterizedTest
    @EnumSource(Way.class)
    void anObjectThatDoesNotComeBackWholeProvesNothing(Way way) throws Exception {
        ToldWebArchive[] self = new ToldWebArchive[1];
        try (FiledRecords records = new FiledRecords(data);
                ToldWebArchive archive = new ToldWebArchive((asked, out) -> {
                    if (asked.stores()) {
                        ToldWebArchive.json(out, "200 OK", "{}");
                    } else {
                        begin(way, self[0], out);
                    }
                })) {
            self[0] = archive;
            records.file(1);
            Courier courier = courier(records, archive);
            Duration[] wait = new Duration[1];
            assertTimeoutPreemptively(PATIENCE, () -> wait[0] = twoRounds(courier));
            assertThat(wait[0]).isPositive();
            assertThat(records.dispatch().state()).isEqualTo(State.SENT);
            assertThat(records.dispatch().lastAnswer().words()).contains("stopped in the middle of the object");
        }
    }

    private static Duration twoRounds(Courier courier) {
        courier.round();
        return courier.round();
    }

    @Test
    void notMoreIsTakenBackThanTheObjectCanHave() throws Exception {
        AtomicLong written = new AtomicLong();
        try (FiledRecords records = new FiledRecords(data);
                ToldWebArchive archive = new ToldWebArchive((asked, out) -> {
                    if (asked.stores()) {
                        ToldWebArchive.json(out, "200 OK", "{}");
                        return;
                    }
                    ToldWebArchive.answer(out, "200 OK", "Content-Type: application/dicom");
                    for (byte[] much = new byte[1 << 16]; written.get() < 1L << 30; written.addAndGet(much.length)) {
                        out.write(much);
                    }
                })) {
            records.file(1);
            Courier courier = new Courier(
                    Destinations.web(
                            FiledRecords.TO,
                            records.archive,
                            archive.peer(Optional.empty(), Duration.ofSeconds(20)),
                            FiledRecords.CLOCK),
                    records.archive,
                    records.times());
            assertTimeoutPreemptively(PATIENCE, courier::round);
            assertThat(records.dispatch().state()).isEqualTo(State.SENT);
            assertThat(records.dispatch().lastAnswer().words()).contains("more than the object can have");
            assertThat(written).hasValueLessThan(64 << 20);
            try (var left = Files.list(data.resolve("incoming"))) {
                assertThat(left).isEmpty();
            }
        }
    }
}
