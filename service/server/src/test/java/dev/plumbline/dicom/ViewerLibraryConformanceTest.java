// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.plumbline.deviation.Comparison;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Reading;
import dev.plumbline.observation.Observation;
import dev.plumbline.observation.ObservationQuantity;
import dev.plumbline.plan.InPlanePlan;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Our report as dcmjs (npm, MIT) reads it for a web viewer: the lines at their pixels and frames, with values and units. */
class ViewerLibraryConformanceTest {
    /** Longer ones were cut at the edge of a viewer's image. */
    private static final int MOST_LABEL = 16;

    /** Of a structure, which a person named. */
    private static final int LONGEST_NAME = 64;

    @TempDir
    private Path folder;

    private JsonNode read(RecordFixtures fixture) throws IOException {
        byte[] report = fixture.compose().stream()
                .filter(object -> object.part().equals("sr"))
                .findFirst()
                .orElseThrow()
                .bytes();
        Path file = Files.write(folder.resolve("report.dcm"), report);
        return new ObjectMapper().readTree(OutsideProgram.run("node", "src/test/npm/report.mjs", file.toString()));
    }

    private static JsonNode group(JsonNode report, String label) {
        for (JsonNode group : report.path("groups")) {
            if (group.path("label").asText().startsWith(label)) {
                return group;
            }
        }
        throw new AssertionError("no group " + label + " in " + report);
    }

    private static List<Double> pixels(List<PointPx> points) {
        List<Double> pixels = new ArrayList<>();
        points.forEach(point -> {
            pixels.add(point.column());
            pixels.add(point.row());
        });
        return pixels;
    }

    private static List<Double> pixels(JsonNode line) {
        List<Double> pixels = new ArrayList<>();
        line.path("points").forEach(value -> pixels.add(value.asDouble()));
        return pixels;
    }

    @Test
    void thePlannedAndTheObservedLineAreAtTheirPixelsOnTheirFrames() throws IOException {
        JsonNode report = read(RecordFixtures.IN_PLANE);
        Comparison comparison = RecordFixtures.IN_PLANE.revision().comparison();
        InPlanePlan plan = (InPlanePlan) comparison.plan();
        JsonNode planned = group(report, "Plan ").path("lines");
        List<PointPx> entryAndTarget = List.of(
                plan.line().orElseThrow().entry(),
                RecordFixtures.IN_PLANE.revision().document().marks().target());
        assertThat(planned).anySatisfy(line -> {
            List<Double> drawn = pixels(line);
            List<Double> expected = pixels(entryAndTarget);
            for (int i = 0; i < expected.size(); i++) {
                assertThat(drawn.get(i)).isCloseTo(expected.get(i), within(0.02));
            }
            assertThat(line.path("image").asText()).isEqualTo("2.25.3001");
            assertThat(line.path("unit").asText()).isEqualTo("mm");
        });
        JsonNode drawn = group(report, "Observed ").path("lines");
        assertThat(pixels(drawn.path(0)))
                .as("the tip stands first, a viewer sets the label there")
                .containsExactly(322.0, 360.0);
        JsonNode observed = drawn.path(1);
        List<Double> shaft = pixels(observed);
        assertThat(shaft.subList(shaft.size() - 2, shaft.size())).as("the tip").containsExactly(322.0, 360.0);
        // From where the needle enters, or comes into the image, along the marks (600, 180) .. (360, 336).
        double slope = (shaft.get(1) - 180) / (shaft.get(0) - 600);
        assertThat(slope).isCloseTo((336.0 - 180) / (360 - 600), within(0.02));
        assertThat(observed.path("image").asText()).isEqualTo("2.25.3002");
        assertThat(observed.path("frame").asInt()).isEqualTo(7);
        Observation seen = comparison.observations().get(0);
        double path = ((Reading.Seen) seen.readings().of(ObservationQuantity.PATH)).value();
        double whole = seen.entry().orElseThrow().distanceTo(new PointPx(322, 360));
        double shown = new PointPx(shaft.get(0), shaft.get(1)).distanceTo(new PointPx(322, 360));
        assertThat(observed.path("value").asDouble())
                .as("the length of what is drawn; pixels are square here")
                .isCloseTo(path * shown / whole, within(0.01));
        assertThat(observed.path("unit").asText()).isEqualTo("mm");
    }

    @ParameterizedTest
    @EnumSource(RecordFixtures.class)
    void everyGroupCanBeDrawnAndNoneHidesAnother(RecordFixtures fixture) throws IOException {
        JsonNode report = read(fixture);
        assertThat(report.path("root").asText()).isEqualTo("126000");
        assertThat(report.path("groups")).isNotEmpty();
        Set<String> tracking = new HashSet<>();
        for (JsonNode group : report.path("groups")) {
            assertThat(tracking.add(group.path("tracking").asText())).isTrue();
            assertThat(group.path("directCoordinates").asInt()).isZero();
            assertThat(group.path("unnamed").asInt()).isZero();
            assertThat(group.path("lines")).as(group.toString()).isNotEmpty();
            assertThat(group.path("lines"))
                    .extracting(line -> line.path("image").asText() + "/"
                            + line.path("frame").asText())
                    .as("all of a group lie on one frame")
                    .containsOnly(group.path("lines").path(0).path("image").asText() + "/"
                            + group.path("lines").path(0).path("frame").asText());
            for (String part : group.path("label").asText().split(" / ", -1)) {
                boolean ours = part.startsWith("Plan") || part.startsWith("Observed") || part.contains("°");
                assertThat(part.length()).as(part).isBetween(1, ours ? MOST_LABEL : LONGEST_NAME);
            }
            group.path("lines")
                    .forEach(line -> assertThat(line.path("value").isNumber()).isTrue());
        }
    }
}
