// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** What a site has to choose from, through a real socket. */
class SiteListFlowTest {
    private static OpenDoor door;

    @BeforeAll
    static void open() throws Exception {
        door = new OpenDoor();
    }

    @AfterAll
    static void close() throws Exception {
        door.close();
    }

    private static JsonNode list(String name) throws Exception {
        OpenDoor.Answer answer = door.get("/v1/site/" + name);
        assertThat(answer.status()).isEqualTo(200);
        assertThat(answer.type()).isEqualTo("application/json");
        return answer.json();
    }

    private static JsonNode named(JsonNode items, String id) {
        for (JsonNode item : items) {
            if (item.path("id").asText().equals(id)) {
                return item;
            }
        }
        throw new AssertionError("not listed: " + id);
    }

    /** Nominal outer diameter of 22 gauge: 0.7176 mm (Wikipedia, Needle gauge comparison chart). */
    @Test
    void aNeedleComesWithItsDiametersAndWhatTheyRestOn() throws Exception {
        JsonNode needles = list("needles").path("needles");
        assertThat(needles).isNotEmpty().allSatisfy(needle -> {
            assertThat(needle.path("lengthMm").asDouble()).isPositive();
            assertThat(needle.path("diameterSource").path("text").asText()).isNotBlank();
        });
        for (JsonNode needle : needles) {
            if (needle.path("gauge").asInt() == 22) {
                assertThat(needle.path("outerDiameterMm").asDouble()).isCloseTo(0.7176, within(5e-4));
            }
        }
    }

    @Test
    void aTransducerComesWithFootprintRangeAndBeamEachWithWhatItRestsOn() throws Exception {
        JsonNode linear = named(list("transducers").path("transducers"), "linear-38");
        assertThat(linear.path("kind").asText()).isEqualTo("linear");
        assertThat(linear.path("footprint").path("mm").asDouble()).isEqualTo(38);
        assertThat(linear.path("footprint").path("standing").asText()).isEqualTo("commonPractice");
        assertThat(linear.path("frequency").path("lowMhz").asDouble())
                .isLessThan(linear.path("frequency").path("highMhz").asDouble());
        assertThat(linear.path("beams"))
                .isNotEmpty()
                .allSatisfy(beam -> assertThat(beam.path("text").asText()).isNotBlank());
        JsonNode curved = named(list("transducers").path("transducers"), "curved-60");
        assertThat(curved.path("beams").path(0).path("mostMm").isNull())
                .as("only \"more than\" is known there")
                .isTrue();
    }

    @Test
    void blocksAreNamesWithoutDepthsAnglesVolumesOrDoses() throws Exception {
        JsonNode blocks = list("blocks").path("blocks");
        assertThat(blocks).isNotEmpty();
        blocks.forEach(block -> assertThat(block.properties())
                .extracting(Map.Entry::getKey)
                .containsExactlyInAnyOrder("id", "name", "region", "level", "parts", "standing", "text"));
    }

    @Test
    void checksComeInTheSitesWordsAndWithoutAnAnswer() throws Exception {
        JsonNode checks = list("checks");
        assertThat(checks.path("checks")).isNotEmpty().allSatisfy(check -> {
            assertThat(check.path("text").asText()).isNotBlank();
            assertThat(check.has("answer")).isFalse();
        });
        assertThat(checks.path("stopMomentHoldsSeconds").asLong()).isPositive();
    }
}
