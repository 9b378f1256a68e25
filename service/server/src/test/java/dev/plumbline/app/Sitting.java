// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.app;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.plumbline.dicom.OutsideProgram;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;

/**
 * What was found in one sitting at a web viewer of others (npm {@code @ohif/app}) in a headless browser. Screenshots are
 * left in {@code target/viewer}.
 */
record Sitting(JsonNode found) {
    private static final String RIG = "src/test/npm-viewer/";
    private static final long LIMIT_SECONDS = 240; // a browser on a busy machine
    private static final ObjectMapper JSON = new ObjectMapper();

    /** What the viewer rounds when it draws: a tenth of a screen pixel, which is less than one of the picture's. */
    private static final double DRAWN_PX = 0.5;

    /** @param archive whose {@code /dicomweb/} the viewer uses */
    static Sitting at(URI archive, String script, String pictures, String... arguments) {
        List<String> command =
                new ArrayList<>(List.of("node", RIG + script, archive.toString(), "target/viewer/" + pictures));
        command.addAll(List.of(arguments));
        try {
            return new Sitting(JSON.readTree(OutsideProgram.run(LIMIT_SECONDS, command.toArray(String[]::new))));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Whatever the viewer asked for, it got, and it asked nobody else. */
    void assertNothingWasRefused() {
        assertThat(found.path("answers"))
                .isNotEmpty()
                .allSatisfy(answer -> assertThat(answer.asText()).matches("(200|204) (GET|POST) .*"));
        assertThat(found.path("elsewhere")).isEmpty();
        assertThat(found.path("exceptions")).isEmpty();
    }

    /** Whether a line lies on the screen, over its image, where it was written. */
    boolean shows(ReportLines.Line written) {
        JsonNode overlay = found.path("overlays").path(written.image());
        return overlay.path("image").asText().contains(written.image())
                && stream(overlay.path("lines")).anyMatch(line -> isAt(line, written.data()));
    }

    private static boolean isAt(JsonNode line, double[] written) {
        if (line.size() * 2 != written.length) {
            return false;
        }
        for (int i = 0; i < written.length; i++) {
            if (Math.abs(line.path(i / 2).path(i % 2).asDouble() - written[i]) > DRAWN_PX) {
                return false;
            }
        }
        return true;
    }

    /** What is written over an image. */
    List<String> texts(String image) {
        return labels(image).map(label -> label.path("text").asText()).toList();
    }

    /** The part of it that lies wholly on the screen. */
    List<String> textsInside(String image) {
        return labels(image)
                .filter(label -> label.path("inside").asBoolean())
                .map(label -> label.path("text").asText())
                .toList();
    }

    private Stream<JsonNode> labels(String image) {
        return stream(found.path("overlays").path(image).path("texts"));
    }

    private static Stream<JsonNode> stream(JsonNode container) {
        return StreamSupport.stream(container.spliterator(), false);
    }
}
