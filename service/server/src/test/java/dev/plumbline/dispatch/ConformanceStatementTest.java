// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.dimse.Status;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The tables of the conformance statement say what the program does. */
class ConformanceStatementTest {
    @Test
    void everyStatusHasItsLine() throws IOException {
        List<String> expected = Arrays.stream(Status.values())
                .map(status -> "| " + status.pattern() + " | " + status.words() + " | "
                        + Verdicts.of(status).words() + " |")
                .toList();
        List<String> table = Files.readAllLines(root().resolve("docs/conformance.md")).stream()
                .dropWhile(line -> !line.startsWith("| C-STORE status |"))
                .skip(2)
                .takeWhile(line -> line.startsWith("|"))
                .toList();
        assertThat(table).containsExactlyElementsOf(expected);
    }

    @Test
    void everyObjectOfARecordIsVerified() throws IOException {
        String text = Files.readString(root().resolve("docs/conformance.md"));
        PeerCheck.RECORD_CLASSES.values().forEach(name -> assertThat(text).contains(name.replace(" Image", "")));
    }

    private static Path root() {
        return Stream.iterate(Path.of("").toAbsolutePath(), Path::getParent)
                .takeWhile(folder -> folder != null)
                .filter(folder -> Files.isDirectory(folder.resolve("docs/adr")))
                .findFirst()
                .orElseThrow();
    }
}
