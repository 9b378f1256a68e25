// SPDX-License-Identifier: Apache-2.0
package dev.plumbline;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.record.Cautions;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class ReadmeTest {
    @Test
    void carriesTheCautionsWordForWord() throws IOException {
        assertThat(Files.readString(Path.of("../../README.md"))).contains("\n" + Cautions.text() + "\n");
    }
}
