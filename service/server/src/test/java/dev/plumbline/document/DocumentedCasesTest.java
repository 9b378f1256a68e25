// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import org.junit.jupiter.api.Test;

/** The examples of the documentation are read and computed as they stand there, and say what comes out. */
class DocumentedCasesTest {
    private static double value(JsonNode quantities, String field) {
        assertThat(quantities.path(field).path("value").isNumber()).as(field).isTrue();
        return quantities.path(field).path("value").doubleValue();
    }

    @Test
    void theInPlaneExampleComesOutAsThePageSays() throws Exception {
        JsonNode answer = DocumentedCases.answer("case-in-plane.md");
        JsonNode plan = answer.path("plan");
        assertThat(plan.path("feasible").booleanValue()).isTrue();
        assertThat(value(plan, "angleToSkinDeg")).isCloseTo(33.7, within(0.05));
        assertThat(value(plan, "pathMm")).isCloseTo(54.1, within(0.05));
        assertThat(value(plan, "entryFromProbeEdgeMm")).isCloseTo(26, within(0.05));
        assertThat(value(plan, "leadInMm")).isCloseTo(31.2, within(0.05));
        assertThat(value(answer.path("observations").get(0), "angleToSkinDeg")).isCloseTo(37.6, within(0.05));
    }

    @Test
    void theOutOfPlaneExampleComesOutAsThePageSays() throws Exception {
        JsonNode answer = DocumentedCases.answer("case-out-of-plane.md");
        JsonNode plan = answer.path("plan");
        assertThat(plan.path("feasible").booleanValue()).isTrue();
        assertThat(value(plan, "angleToSkinDeg")).isCloseTo(45, within(0.05));
        assertThat(value(plan, "pathMm")).isCloseTo(28.3, within(0.05));
        JsonNode observed = answer.path("observations").get(0);
        assertThat(value(observed, "crossingDepthMm")).isCloseTo(21, within(0.05));
        assertThat(value(observed, "angleToSkinDeg")).isCloseTo(46.4, within(0.05));
    }
}
