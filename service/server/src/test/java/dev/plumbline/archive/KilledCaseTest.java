// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.config.BedsideFiles;
import dev.plumbline.document.CaseJson;
import dev.plumbline.document.CasePart;
import dev.plumbline.document.Door;
import dev.plumbline.document.StrictJson;
import dev.plumbline.procedure.LoggedEvent;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A process that keeps a case is killed at some moment; every event that it had acknowledged stands in the case. */
class KilledCaseTest {
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-01-05T09:30:00Z"), ZoneOffset.UTC);

    @TempDir
    Path root;

    @ParameterizedTest
    @ValueSource(ints = {1, 9, 60})
    void everyAcknowledgedEventStandsInTheCase(int killedAfter) throws Exception {
        Path data = root.resolve("data");
        List<String> acknowledged = acknowledgedUntilKilled(data, killedAfter);
        assertThat(acknowledged).hasSizeBetween(killedAfter, Recorder.MANY - 1);
        try (DataFolder folder = DataFolder.open(data);
                SqliteStore store = SqliteStore.open(folder.database())) {
            Cases cases = cases(folder, store);
            List<String> held = cases.held("case-1").document().bedside().events().stream()
                    .map(LoggedEvent::id)
                    .toList();
            assertThat(held).startsWith(acknowledged.toArray(String[]::new)).doesNotHaveDuplicates();
            // One more may have been kept and not yet acknowledged; sending it again is harmless.
            append(cases, acknowledged.size() + 1);
            assertThat(cases.held("case-1").document().bedside().events()).hasSize(acknowledged.size() + 1);
        }
    }

    private static List<String> acknowledgedUntilKilled(Path data, int killedAfter) throws Exception {
        Process process = new ProcessBuilder(
                        System.getProperty("java.home") + "/bin/java",
                        "-cp",
                        System.getProperty("java.class.path"),
                        Recorder.class.getName(),
                        data.toString())
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        List<String> acknowledged = new ArrayList<>();
        try (BufferedReader lines = process.inputReader()) {
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                acknowledged.add(line);
                if (acknowledged.size() == killedAfter) {
                    process.toHandle().destroyForcibly();
                }
            }
        }
        process.waitFor();
        return acknowledged;
    }

    private static Cases cases(DataFolder folder, SqliteStore store) {
        return new Cases(new Archive(folder, store, new LowWater(0, 0)), BedsideFiles.shipped(), CLOCK);
    }

    private static String append(Cases cases, int number) {
        String event = "{\"id\": \"e" + number + "\", \"kind\": \"redirection\", \"enteredBy\": \"Roe^Al\","
                + " \"happenedAt\": \"2026-01-05T09:00:00Z\", \"enteredAt\": \"2026-01-05T09:00:00Z\"}";
        cases.append(
                "case-1", CasePart.EVENTS, StrictJson.read(event.getBytes(StandardCharsets.UTF_8)), Optional.empty());
        return "e" + number;
    }

    /** Opens a case and appends one event after the other, and prints the id of each when it is acknowledged. */
    static final class Recorder {
        static final int MANY = 900;

        private Recorder() {}

        public static void main(String[] arguments) throws IOException {
            try (DataFolder folder = DataFolder.open(Path.of(arguments[0]));
                    SqliteStore store = SqliteStore.open(folder.database())) {
                String document =
                        "{\"schema\": \"plumbline-case/1\", \"caseId\": \"case-1\", \"approach\": \"inPlane\","
                                + " \"frame\": {\"columns\": 640, \"rows\": 640, \"mmPerColumn\": 0.1, \"mmPerRow\": 0.1},"
                                + " \"marks\": {\"target\": {\"column\": 320, \"row\": 300}}}";
                String canonical =
                        CaseJson.canonical(CaseJson.read(document.getBytes(StandardCharsets.UTF_8), Door.HTTP));
                store.write(writing -> writing.add(new StoredCase("case-1", canonical, CLOCK.instant())));
                Cases cases = cases(folder, store);
                for (int i = 1; i < MANY; i++) {
                    System.out.println(append(cases, i));
                }
            }
        }
    }
}
