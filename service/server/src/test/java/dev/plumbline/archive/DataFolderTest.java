// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.plumbline.problem.Refusal;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DataFolderTest {
    @TempDir
    Path root;

    @Test
    void letsOneProcessUseAFolder() throws Exception {
        try (DataFolder folder = DataFolder.open(root.resolve("data"))) {
            Process second = new ProcessBuilder(
                            System.getProperty("java.home") + "/bin/java",
                            "-cp",
                            System.getProperty("java.class.path"),
                            SecondProcess.class.getName(),
                            folder.root().toString())
                    .redirectErrorStream(true)
                    .start();
            String said = new String(second.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            assertThat(second.waitFor()).isEqualTo(2);
            assertThat(said)
                    .contains("The data folder " + folder.root() + " is in use by another running Plumbline.")
                    .doesNotContain("\tat ");
        }
    }

    @Test
    void refusesToUseAFolderTwiceInOneProcess() throws IOException {
        Path data = root.resolve("data");
        try (DataFolder folder = DataFolder.open(data)) {
            assertThatThrownBy(() -> DataFolder.open(data)).isInstanceOf(Refusal.class);
            assertThat(folder.root()).isEqualTo(data);
        }
        DataFolder.open(data).close();
    }

    /** Tries to open a folder and says what came of it. */
    static final class SecondProcess {
        private SecondProcess() {}

        public static void main(String[] arguments) throws IOException {
            try (DataFolder folder = DataFolder.open(Path.of(arguments[0]))) {
                System.out.println("opened " + folder.root());
            } catch (Refusal refusal) {
                System.out.println(refusal.problem().detail());
                System.exit(2);
            }
        }
    }
}
