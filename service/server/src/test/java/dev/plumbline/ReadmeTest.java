// SPDX-License-Identifier: Apache-2.0
package dev.plumbline;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.record.Cautions;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ReadmeTest {
    @ParameterizedTest
    @ValueSource(strings = {"README.md", "docs/conformance.md"})
    void carriesTheCautionsWordForWord(String page) throws IOException {
        assertThat(Files.readString(Path.of("../..", page))).contains("\n" + Cautions.text() + "\n");
    }
}
