// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A process that receives objects is killed at some moment; what it had acknowledged is there afterwards. */
class KilledProcessTest {
    @TempDir
    Path root;

    @ParameterizedTest
    @ValueSource(ints = {1, 7, 40})
    void keepsEveryAcknowledgedObject(int killedAfter) throws Exception {
        Path data = root.resolve("data");
        List<String> acknowledged = acknowledgedUntilKilled(data, killedAfter);
        assertThat(acknowledged).hasSizeGreaterThanOrEqualTo(killedAfter);
        try (DataFolder folder = DataFolder.open(data);
                SqliteStore store = SqliteStore.open(folder.database())) {
            Inspection inspection = new Inspection(folder, store);
            assertThat(store.objects())
                    .extracting(HeldObject::sopInstanceUid)
                    .containsAll(acknowledged)
                    .doesNotHaveDuplicates();
            assertThat(inspection.altered()).isEmpty();
            try (Stream<Path> incoming = Files.list(folder.incoming())) {
                assertThat(incoming).isEmpty();
            }
            // An object that was placed but not yet acknowledged may be there; sending it again is harmless.
            Archive archive = new Archive(folder, store, new LowWater(0, 0));
            byte[] next = InventedObjects.imageFile(1, 1, acknowledged.size() + 1);
            assertThat(archive.receive(new ByteArrayInputStream(next)).object().digest())
                    .isNotEmpty();
            assertThat(inspection.reindex().damages()).isEmpty();
        }
    }

    private static List<String> acknowledgedUntilKilled(Path data, int killedAfter) throws Exception {
        Process process = new ProcessBuilder(
                        System.getProperty("java.home") + "/bin/java",
                        "-cp",
                        System.getProperty("java.class.path"),
                        Receiver.class.getName(),
                        data.toString())
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        List<String> acknowledged = new ArrayList<>();
        try (BufferedReader lines = process.inputReader()) {
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                acknowledged.add(line);
                if (acknowledged.size() == killedAfter) {
                    // Through the handle, which leaves the lines that were already written readable.
                    process.toHandle().destroyForcibly();
                }
            }
        }
        process.waitFor();
        return acknowledged;
    }

    @Test
    void countsOnTheReceiverToGoOnUntilItIsKilled() throws Exception {
        assertThat(acknowledgedUntilKilled(root.resolve("data"), 3)).hasSizeLessThan(Receiver.MANY);
    }

    /** Receives one object after the other and prints the UID of each when it is acknowledged. */
    static final class Receiver {
        static final int MANY = 100_000;

        private Receiver() {}

        public static void main(String[] arguments) throws IOException {
            try (DataFolder folder = DataFolder.open(Path.of(arguments[0]));
                    SqliteStore store = SqliteStore.open(folder.database())) {
                Archive archive = new Archive(folder, store, new LowWater(0, 0));
                for (int i = 1; i < MANY; i++) {
                    byte[] object = InventedObjects.imageFile(1, 1, i);
                    System.out.println(archive.receive(new ByteArrayInputStream(object))
                            .object()
                            .sopInstanceUid());
                }
            }
        }
    }
}
