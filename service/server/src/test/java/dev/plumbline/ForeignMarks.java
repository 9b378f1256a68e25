// SPDX-License-Identifier: Apache-2.0
package dev.plumbline;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** Reports and presentation states that pydicom (Debian's python3-pydicom) wrote, as independent software. */
public final class ForeignMarks {
    private ForeignMarks() {}

    /**
     * An object drawn on a frame.
     *
     * @param more further fields of the specification, each followed by a comma
     * @param marks one JSON object each, see {@code foreign_marks.py}
     */
    public static Path write(Path folder, Path frame, String more, String... marks)
            throws IOException, InterruptedException {
        Path spec = Files.writeString(
                folder.resolve("spec.json"), "{" + more + "\"marks\":[" + String.join(",", marks) + "]}");
        Path out = folder.resolve("marks.dcm");
        Process process = new ProcessBuilder(
                        "/usr/bin/python3",
                        "src/test/resources/python/foreign_marks.py",
                        frame.toString(),
                        spec.toString(),
                        out.toString())
                .redirectErrorStream(true)
                .start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor()).as(said).isZero();
        return out;
    }
}
