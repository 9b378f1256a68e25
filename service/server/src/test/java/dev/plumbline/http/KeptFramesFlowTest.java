// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Frames that a case keeps, through a real socket. */
class KeptFramesFlowTest {
    private static final String HELD = "{\"sopInstanceUid\":\"%s\"}";

    private OpenDoor door;

    @BeforeEach
    void open() throws Exception {
        door = new OpenDoor();
        door.postDicom("/v1/frames", SampleBodies.PLANNED_FRAME);
        door.postDicom("/v1/frames", SampleBodies.NEEDLE_FRAME);
    }

    @AfterEach
    void close() throws Exception {
        door.close();
    }

    private OpenDoor.Answer kept(String... frames) throws Exception {
        ObjectMapper mapper = new ObjectMapper();
        ObjectNode json = (ObjectNode) mapper.readTree(SampleBodies.CASE);
        String planned = json.path("frame").path("sopInstanceUid").asText();
        for (String frame : frames) {
            json.withArray("frames")
                    .addObject()
                    .put("role", "preScan")
                    .set("frame", mapper.readTree(frame.replace("PLANNED", HELD.formatted(planned))));
        }
        return door.post("/v1/records", json.toString());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "PLANNED | PLANNED | 422 /frames/1/frame",
                "PLANNED | {\"sopInstanceUid\":\"2.25.404\"} | 404 /frames/1/frame",
                "PLANNED | {\"columns\":640} | 422 /frames/1/frame/columns",
                "PLANNED | {} | 422 /frames/1/frame",
            })
    void whatCannotBeKeptIsNamed(String first, String second, String expected) throws Exception {
        OpenDoor.Answer answer = kept(first, second);
        assertThat(answer.status() + " " + answer.json().path("pointer").asText())
                .as(answer.text())
                .isEqualTo(expected);
    }

    @Test
    void aFrameThatIsHeldIsKept() throws Exception {
        assertThat(kept("PLANNED").status()).isEqualTo(201);
    }
}
