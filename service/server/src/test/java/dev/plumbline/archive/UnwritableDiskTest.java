// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A disk that takes nothing is told as one without room: the sender is not to blame and sends again. TRUST T5. */
class UnwritableDiskTest {
    private static final int DISK_MB = 6;

    @TempDir
    Path root;

    @Test
    void refusesWhileTheDiskIsReadOnlyAndGoesOnAfterwards() throws Exception {
        assertThat(SmallDisk.run(root, DISK_MB, GoesReadOnly.class))
                .containsExactly("kept", "no room", "left 0", "kept", "held 2");
    }

    /** Receives while the folder for what comes in can be written, while it cannot, and again. */
    static final class GoesReadOnly {
        private GoesReadOnly() {}

        public static void main(String[] arguments) throws IOException {
            try (DataFolder folder = DataFolder.open(Path.of(arguments[0]).resolve("data"));
                    SqliteStore store = SqliteStore.open(folder.database())) {
                Archive archive = new Archive(folder, store, new LowWater(0, 0));
                String incoming = folder.incoming().toString();
                System.out.println(outcome(archive, 1));
                run("mount", "--bind", incoming, incoming);
                run("mount", "-o", "remount,bind,ro", incoming);
                System.out.println(outcome(archive, 2));
                run("umount", incoming);
                try (Stream<Path> left = Files.list(folder.incoming())) {
                    System.out.println("left " + left.count());
                }
                System.out.println(outcome(archive, 3));
                System.out.println("held " + store.objects().size());
            }
        }

        private static void run(String... command) throws IOException {
            try {
                assertThat(new ProcessBuilder(command).inheritIO().start().waitFor())
                        .isZero();
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
        }

        private static String outcome(Archive archive, int number) {
            try {
                archive.receive(new ByteArrayInputStream(InventedObjects.imageFile(1, 1, number)));
                return "kept";
            } catch (Refusal e) {
                return e.problem() instanceof Problem.NoRoom ? "no room" : "refused";
            }
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Input/output error",
                "/data/incoming/1.tmp: Read-only file system",
                "File too large",
                "Disk quota exceeded",
                "No space left on device"
            })
    void takesTheSystemsWordsForARefusal(String words) {
        assertThat(LowWater.refusal(root, new IOException(words)).orElseThrow().problem())
                .isInstanceOf(Problem.NoRoom.class);
    }

    @Test
    void takesNoOtherFailureForOne() {
        for (String words : List.of("Permission denied", "The peer closed the connection.")) {
            assertThat(LowWater.refusal(root, new IOException(words))).isEmpty();
        }
    }
}
