// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.plumbline.archive.Dispatch.Part;
import dev.plumbline.archive.Dispatch.State;
import dev.plumbline.archive.Dispatch.Taken;
import dev.plumbline.archive.Findings;
import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.SocketTimeoutException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Answers of STOW-RS and WADO-RS services, and what becomes of the record. TRUST 3.2, T8. */
class WebAnswersFlowTest {
    private static final Duration RESPONSE = Duration.ofSeconds(5);

    @TempDir
    Path data;

    private static Courier courier(FiledRecords records, ToldWebArchive archive, Optional<Path> token) {
        return new Courier(
                Destinations.web(FiledRecords.TO, records.archive, archive.peer(token, RESPONSE), FiledRecords.CLOCK),
                records.archive,
                records.times());
    }

    private static String item(String uid, String reasonTag, int reason) {
        return "{\"00081155\":{\"vr\":\"UI\",\"Value\":[\"" + uid + "\"]},\"" + reasonTag
                + "\":{\"vr\":\"US\",\"Value\":[" + reason + "]}}";
    }

    private static String sequence(String tag, String item) {
        return "{\"" + tag + "\":{\"vr\":\"SQ\",\"Value\":[" + item + "]}}";
    }

    private static String first(FiledRecords records) {
        return records.dispatch().parts().get(0).sopInstanceUid();
    }

    /** HTTP status, failure reason of the object, what becomes of it, and the code that is kept. */
    @ParameterizedTest
    @CsvSource({
        "409 Conflict, 0111, SENT, BEFORE, 409/0111",
        "409 Conflict, A700, QUEUED, AS_SENT, 409/A700",
        "409 Conflict, A900, HELD, AS_SENT, 409/A900",
        "409 Conflict, C000, HELD, AS_SENT, 409/C000",
        "409 Conflict, 0122, HELD, AS_SENT, 409/0122",
        "409 Conflict, 0124, HELD, AS_SENT, 409/0124",
        "409 Conflict, 0110, QUEUED, AS_SENT, 409/0110",
        "202 Accepted, 0111, SENT, BEFORE, 202/0111",
        "202 Accepted, A900, HELD, AS_SENT, 202/A900",
        "200 OK, C123, HELD, AS_SENT, 200/C123"
    })
    void theFailureReasonOfTheObjectDecides(String status, String reason, State state, Taken taken, String code)
            throws Exception {
        String[] uid = new String[1];
        try (FiledRecords records = new FiledRecords(data);
                ToldWebArchive archive = new ToldWebArchive((asked, out) -> {
                    if (asked.stores()) {
                        String item = item(uid[0], "00081197", Integer.parseInt(reason, 16));
                        ToldWebArchive.json(out, status, sequence("00081198", item));
                    } else {
                        ToldWebArchive.answer(out, "406 Not Acceptable", "Content-Length: 0");
                    }
                })) {
            records.file(1);
            uid[0] = first(records);
            courier(records, archive, Optional.empty()).round();
            Part part = records.dispatch().parts().get(0);
            assertThat(part.state()).isEqualTo(state);
            assertThat(part.taken()).isEqualTo(taken);
            assertThat(part.answer().code()).isEqualTo(code);
        }
    }

    /** An object of others in the list says nothing of ours. */
    @ParameterizedTest
    @CsvSource({
        "202 Accepted, SENT, BEFORE",
        "409 Conflict, SENT, BEFORE",
        "200 OK, SENT, AS_SENT",
    })
    void whatIsSaidOfOtherObjectsIsNotOurs(String status, State state, Taken taken) throws Exception {
        try (FiledRecords records = new FiledRecords(data);
                ToldWebArchive archive = new ToldWebArchive((asked, out) -> {
                    if (asked.stores()) {
                        ToldWebArchive.json(out, status, sequence("00081198", item("2.25.1", "00081197", 0xA900)));
                    } else {
                        ToldWebArchive.answer(out, "406 Not Acceptable", "Content-Length: 0");
                    }
                })) {
            records.file(1);
            courier(records, archive, Optional.empty()).round();
            assertThat(records.dispatch().state()).isEqualTo(state);
            assertThat(records.dispatch().parts()).extracting(Part::taken).containsOnly(taken);
        }
    }

    @ParameterizedTest
    @CsvSource({"B000, coercion of data elements", "B006, elements discarded", "B007, data set does not match SOP class"
    })
    void aWarningMarksTheObjectAsAltered(String reason, String words) throws Exception {
        String[] uid = new String[1];
        try (FiledRecords records = new FiledRecords(data);
                ToldWebArchive archive = new ToldWebArchive((asked, out) -> {
                    if (asked.stores()) {
                        String item = item(uid[0], "00081196", Integer.parseInt(reason, 16));
                        ToldWebArchive.json(out, "200 OK", sequence("00081199", item));
                    } else {
                        ToldWebArchive.answer(out, "406 Not Acceptable", "Content-Length: 0");
                    }
                })) {
            records.file(1);
            uid[0] = first(records);
            courier(records, archive, Optional.empty()).round();
            assertThat(records.dispatch().state()).isEqualTo(State.SENT);
            Part part = records.dispatch().parts().get(0);
            assertThat(part.taken()).isEqualTo(Taken.ALTERED);
            assertThat(part.answer().code()).isEqualTo("200/" + reason);
            assertThat(part.answer().words()).isEqualTo(words);
            StatusReport report = new StatusReport(
                    DispatchDesk.closed(records.store(), List.of(), FiledRecords.CLOCK),
                    1L << 30,
                    Findings.NONE,
                    List.of());
            assertThat(report.text()).contains("1 record was altered by the archive");
        }
    }

    /** What is asked for, in seconds; what is granted. */
    @ParameterizedTest
    @CsvSource({"120, 120", "3600, 3600", "999999, 3600", "999999999, 3600", "1, 5", "soon, 5"})
    void retryAfterIsHonouredUpToAnHour(String asked, int seconds) throws Exception {
        try (FiledRecords records = new FiledRecords(data);
                ToldWebArchive archive = new ToldWebArchive((request, out) ->
                        ToldWebArchive.answer(out, "503 Busy", "Retry-After: " + asked, "Content-Length: 0"))) {
            records.file(1);
            Courier courier = courier(records, archive, Optional.empty());
            courier.round();
            assertThat(records.dispatch().progress().nextAttempt())
                    .contains(FiledRecords.CLOCK.instant().plusSeconds(seconds));
            records.nanoTime.addAndGet(Duration.ofSeconds(seconds).toNanos() - 1);
            courier.round();
            assertThat(archive.asked).hasSize(1);
            records.nanoTime.addAndGet(1);
            courier.round();
            assertThat(archive.asked).hasSize(2);
        }
    }

    /** The clock of the courier stands at Mon, 05 Jan 2026 09:30:00 GMT. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Mon, 05 Jan 2026 09:32:00 GMT | | 120",
                "Monday, 05-Jan-26 09:32:00 GMT | | 120",
                "Mon Jan  5 09:32:00 2026 | | 120",
                "Mon, 05 Jan 2026 19:30:00 GMT | | 3600",
                "Mon, 05 Jan 2026 09:29:00 GMT | | 5",
                "Mon, 05 Jan 2026 09:32:00 CET | | 5",
                "Tue, 05 Jan 2026 09:32:00 GMT | | 5",
                "Mon, 05 Jan 2026 08:02:00 GMT | Mon, 05 Jan 2026 08:00:00 GMT | 120",
                "Mon, 05 Jan 2026 23:02:00 GMT | Mon, 05 Jan 2026 23:00:00 GMT | 120",
                "120 | Mon, 05 Jan 2026 23:00:00 GMT | 120"
            })
    void aDateInRetryAfterIsHonouredByTheClockOfTheService(String asked, String date, int seconds) throws Exception {
        String[] headers = date == null
                ? new String[] {"Retry-After: " + asked, "Content-Length: 0"}
                : new String[] {"Retry-After: " + asked, "Date: " + date, "Content-Length: 0"};
        try (FiledRecords records = new FiledRecords(data);
                ToldWebArchive archive =
                        new ToldWebArchive((request, out) -> ToldWebArchive.answer(out, "503 Busy", headers))) {
            records.file(1);
            courier(records, archive, Optional.empty()).round();
            assertThat(records.dispatch().progress().nextAttempt())
                    .contains(FiledRecords.CLOCK.instant().plusSeconds(seconds));
        }
    }

    @Test
    void aTokenThatWasRenewedMeanwhileIsTaken() throws Exception {
        Path token = Files.writeString(data.resolve("token"), "old");
        try (FiledRecords records = new FiledRecords(data.resolve("folder"));
                ToldWebArchive archive = new ToldWebArchive((asked, out) -> byToken(asked, out))) {
            records.file(1);
            Courier courier = courier(records, archive, Optional.of(token));
            courier.round();
            assertThat(records.dispatch().state()).isEqualTo(State.QUEUED);
            assertThat(records.dispatch().lastAnswer().code()).isEqualTo("401");
            Files.writeString(token, "new\n");
            records.nanoTime.addAndGet(Backoff.FIRST.toNanos());
            courier.round();
            assertThat(records.dispatch().state()).isEqualTo(State.SENT);
        }
    }

    private static void byToken(ToldWebArchive.Asked asked, OutputStream out) throws IOException {
        if (!asked.head().contains("authorization: bearer new\r")) {
            ToldWebArchive.answer(out, "401 Unauthorized", "WWW-Authenticate: Bearer", "Content-Length: 0");
        } else if (asked.stores()) {
            ToldWebArchive.json(out, "200 OK", "{}");
        } else {
            ToldWebArchive.answer(out, "406 Not Acceptable", "Content-Length: 0");
        }
    }

    @Test
    void aTokenThatIsStillRefusedHoldsTheRecord() throws Exception {
        Path token = Files.writeString(data.resolve("token"), "old");
        try (FiledRecords records = new FiledRecords(data.resolve("folder"));
                ToldWebArchive archive = new ToldWebArchive((asked, out) -> byToken(asked, out))) {
            records.file(1);
            Courier courier = courier(records, archive, Optional.of(token));
            courier.round();
            records.nanoTime.addAndGet(Backoff.FIRST.toNanos());
            courier.round();
            assertThat(records.dispatch().state()).isEqualTo(State.HELD);
            assertThat(archive.asked).hasSize(2);
        }
    }

    /** The archive has it, and the connection breaks before it says so. */
    @Test
    void anAnswerThatIsLostIsNoneAndTheSameBytesGoAgain() throws Exception {
        try (FiledRecords records = new FiledRecords(data);
                ToldWebArchive archive = new ToldWebArchive((asked, out) -> {})) {
            records.file(1);
            Courier courier = courier(records, archive, Optional.empty());
            courier.round();
            assertThat(records.dispatch().state()).isEqualTo(State.QUEUED);
            records.nanoTime.addAndGet(Backoff.LONGEST.toNanos());
            courier.round();
            assertThat(archive.asked).hasSizeGreaterThanOrEqualTo(2);
            assertThat(archive.asked.stream().map(ToldWebArchive.Asked::body).distinct())
                    .hasSize(1);
        }
    }

    @Test
    void nobodyElseIsSpokenToThanTheConfiguredHost() throws Exception {
        try (ServerSocket elsewhere = new ServerSocket(0, 5, InetAddress.getLoopbackAddress());
                FiledRecords records = new FiledRecords(data);
                ToldWebArchive archive = new ToldWebArchive((asked, out) -> ToldWebArchive.answer(
                        out,
                        "307 Temporary Redirect",
                        "Location: http://127.0.0.1:" + elsewhere.getLocalPort() + "/studies",
                        "Content-Length: 0"))) {
            elsewhere.setSoTimeout(1);
            records.file(1);
            courier(records, archive, Optional.empty()).round();
            assertThat(records.dispatch().state()).isEqualTo(State.HELD);
            assertThatThrownBy(elsewhere::accept).isInstanceOf(SocketTimeoutException.class);
        }
    }
}
