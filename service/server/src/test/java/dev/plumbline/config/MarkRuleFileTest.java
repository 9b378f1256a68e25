// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.config;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import dev.plumbline.problem.Refusal;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MarkRuleFileTest {
    @Test
    void theShippedRulesKeepTheirSchema() throws Exception {
        assertThat(SiteFiles.complaints("mark-rules.schema.json", SiteFiles.shipped(MarkRuleFile.NAME)))
                .isEmpty();
        assertThat(MarkRuleFile.shipped().opens())
                .as("marks do not tell the approach")
                .isEmpty();
        assertThat(MarkRuleFile.shipped()).isEqualTo(MarkRuleFile.shipped());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{\"means\":\"aim\",\"label\":\"x\"}|/rules/0/means",
                "{\"means\":\"target\",\"label\":\"(x\"}|/rules/0/label",
                "{\"means\":\"target\"}|/rules/0",
                "{\"means\":\"target\",\"label\":\"x\",\"code\":{\"value\":\"1\",\"scheme\":\"DCM\"}}|/rules/0",
                "{\"means\":\"target\",\"code\":{\"value\":\"1\"}}|/rules/0/code/scheme",
                "{\"means\":\"hazard\",\"label\":\"x\",\"hazardKind\":\"ghost\"}|/rules/0/hazardKind"
            })
    void aRuleThatCannotHoldIsNamed(String rule, String pointer) {
        String file = "{\"schema\":\"plumbline-mark-rules/1\",\"rules\":[" + rule + "]}";
        Refusal refusal = catchThrowableOfType(
                Refusal.class,
                () -> MarkRuleFile.read(new ByteArrayInputStream(file.getBytes(StandardCharsets.UTF_8))));
        assertThat(refusal.problem().pointer()).isEqualTo(pointer);
        assertThat(refusal.problem().remedy()).isNotBlank();
    }
}
