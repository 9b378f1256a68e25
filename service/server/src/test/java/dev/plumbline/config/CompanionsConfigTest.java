// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.config;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.plumbline.problem.Refusal;
import dev.plumbline.record.Companions;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CompanionsConfigTest {
    @TempDir
    Path folder;

    private ServiceConfig read(String more) throws IOException {
        Path file = folder.resolve("service.json");
        Files.writeString(file, "{\"schema\":\"plumbline-service/1\"" + more + "}");
        return ServiceConfig.read(file);
    }

    @Test
    void everyCompanionIsMadeUnlessItIsSwitchedOff() throws IOException {
        assertThat(read("").companions()).isEqualTo(Companions.ALL);
        assertThat(read(",\"companions\":{\"pdf\":false}").companions()).isEqualTo(new Companions(true, false, true));
        assertThat(read(",\"companions\":{\"presentationStates\":false,\"pdf\":false,\"keyObjects\":false}")
                        .companions())
                .isEqualTo(new Companions(false, false, false));
    }

    @Test
    void anUnknownCompanionIsRefused() {
        assertThatThrownBy(() -> read(",\"companions\":{\"keyObject\":false}"))
                .isInstanceOf(Refusal.class)
                .satisfies(e -> assertThat(((Refusal) e).problem().pointer()).isEqualTo("/companions/keyObject"));
    }
}
