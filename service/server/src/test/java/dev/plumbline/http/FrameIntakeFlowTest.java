// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.UnfitFrames;
import java.net.http.HttpRequest;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is no frame is refused with words, and nothing of it stays. */
class FrameIntakeFlowTest {
    private OpenDoor door;

    @BeforeEach
    void open() throws Exception {
        door = new OpenDoor();
    }

    @AfterEach
    void close() throws Exception {
        door.close();
    }

    private static byte[] body(String kind) {
        byte[] frame = SampleBodies.PLANNED_FRAME;
        return switch (kind) {
            case "empty" -> new byte[0];
            case "a letter" ->
                "This is a letter, and long enough to hide a preamble in."
                        .repeat(20)
                        .getBytes(StandardCharsets.US_ASCII);
            case "truncated" -> Arrays.copyOf(frame, frame.length / 2);
            case "cut in the header" -> Arrays.copyOf(frame, 400);
            case "trailing bytes" -> Arrays.copyOf(frame, frame.length + 3);
            default -> UnfitFrames.withoutPixels();
        };
    }

    @ParameterizedTest
    @ValueSource(strings = {"empty", "a letter", "truncated", "cut in the header", "trailing bytes", "no pixel data"})
    void refusesWhatIsNoWholeImage(String kind) throws Exception {
        OpenDoor.Answer answer = door.postDicom("/v1/frames", body(kind));
        assertThat(answer.status()).as(answer.text()).isEqualTo(422);
        assertThat(answer.type()).isEqualTo("application/problem+json");
        assertThat(answer.json().path("type").asText()).matches("urn:plumbline:problem:(malformed|unsupported)-object");
        assertThat(answer.json().path("detail").asText()).isNotBlank();
        assertThat(answer.json().path("remedy").asText()).isNotBlank();
        assertThat(answer.text()).doesNotContain("Exception").doesNotContain("\\tat ");
        assertThat(door.rooms.holdsNothing()).isTrue();
    }

    @Test
    void refusesAFrameInAnotherMediaType() throws Exception {
        OpenDoor.Answer answer = door.send(door.request("/v1/frames")
                .header("Content-Type", "image/png")
                .POST(HttpRequest.BodyPublishers.ofByteArray(SampleBodies.PLANNED_FRAME)));
        assertThat(answer.status()).isEqualTo(415);
        assertThat(door.rooms.holdsNothing()).isTrue();
    }

    @Test
    void refusesAnotherObjectUnderTheSameUid() throws Exception {
        assertThat(door.postDicom("/v1/frames", SampleBodies.PLANNED_FRAME).status())
                .isEqualTo(201);
        byte[] other = SampleBodies.PLANNED_FRAME.clone();
        other[other.length - 2] ^= 1; // one sample differs
        OpenDoor.Answer answer = door.postDicom("/v1/frames", other);
        assertThat(answer.status()).isEqualTo(409);
        assertThat(answer.json().path("type").asText()).isEqualTo("urn:plumbline:problem:conflict");
    }
}
