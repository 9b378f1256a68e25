// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import static dev.plumbline.archive.InventedObjects.imageFile;
import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.dicom.DicomFile;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Writing fails in the middle of an object: in a process whose files may not grow, because that needs no rights. */
class FullDiskTest {
    private static final int LIMIT_BYTES = 600_000;

    @TempDir
    Path root;

    @Test
    void leavesNothingHalfWrittenAndGoesOn() throws Exception {
        Process process = new ProcessBuilder(
                        System.getProperty("java.home") + "/bin/java",
                        "-cp",
                        System.getProperty("java.class.path"),
                        SmallFilesOnly.class.getName(),
                        root.resolve("data").toString())
                .redirectError(root.resolve("log").toFile())
                .start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor()).as(said).isZero();
        assertThat(said.lines()).containsExactly("kept", "no room", "left 0", "kept", "held 2");
    }

    /** Receives a small object, one that is too large for the limit, and a small one again. */
    static final class SmallFilesOnly {
        private SmallFilesOnly() {}

        public static void main(String[] arguments) throws IOException {
            try (DataFolder folder = DataFolder.open(Path.of(arguments[0]));
                    SqliteStore store = SqliteStore.open(folder.database())) {
                Archive archive = new Archive(folder, store, new LowWater(0, 0));
                let(LIMIT_BYTES);
                System.out.println(outcome(archive, imageFile(1, 1, 1)));
                byte[] large = DicomFile.encode(InventedObjects.cine(1, 1, 2, 10_000));
                System.out.println(outcome(archive, large));
                try (Stream<Path> left = Files.list(folder.incoming())) {
                    System.out.println("left " + left.count());
                }
                System.out.println(outcome(archive, imageFile(1, 1, 3)));
                System.out.println("held " + store.objects().size());
            }
        }

        /** From here on no file of this process grows beyond so many bytes; writing on fails as on a full disk. */
        private static void let(int bytes) throws IOException {
            Process limit = new ProcessBuilder(
                            "prlimit",
                            "--pid",
                            Long.toString(ProcessHandle.current().pid()),
                            "--fsize=" + bytes)
                    .inheritIO()
                    .start();
            try {
                assertThat(limit.waitFor()).isZero();
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
        }

        private static String outcome(Archive archive, byte[] object) {
            try {
                archive.receive(new ByteArrayInputStream(object));
                return "kept";
            } catch (Refusal e) {
                return e.problem() instanceof Problem.NoRoom ? "no room" : "refused";
            }
        }
    }
}
