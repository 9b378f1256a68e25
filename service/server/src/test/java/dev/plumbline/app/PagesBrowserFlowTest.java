// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.app;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.plumbline.dicom.OutsideProgram;
import dev.plumbline.dicom.SampleObjects;
import dev.plumbline.samples.Sample;
import dev.plumbline.samples.SampleSet;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The service's own pages in a headless browser, by mouse, touch and keys: what is shown is what the interface answers, and
 * axe-core finds no barrier. Screenshots are left in {@code target/pages}.
 */
class PagesBrowserFlowTest {
    private static final String RIG = "src/test/npm-viewer/pages/";
    private static final long LIMIT_SECONDS = 300; // a browser on a busy machine
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final SampleSet SET = new SampleSet(1);
    private static final SampleObjects OBJECTS = new SampleObjects(SET);

    @TempDir
    Path folder;

    private SampleService running;

    @BeforeEach
    void start() throws IOException {
        running = SampleService.start(folder.resolve("data"));
    }

    @AfterEach
    void stop() throws IOException {
        running.close();
    }

    @Test
    void anInPlaneCaseGoesFromUploadToASignedRecordThoughTheNetworkGoesOnce() throws Exception {
        JsonNode sitting = sit("in-plane.mjs", "in-plane", SET.inPlanePlan(), SET.inPlaneNeedle());
        assertNoBarrier(sitting);
        JsonNode record = record(sitting);
        assertThat(record.path("state").asText()).isEqualTo("signed");
        JsonNode document = record.path("case");
        assertThat(document.at("/marks/target/row").asDouble()).isEqualTo(401);
        assertThat(document.at("/constraints/angleBandDeg/1").asInt()).isEqualTo(50);
        assertThat(sitting.path("lost").asInt())
                .as("an answer was lost on the way")
                .isEqualTo(201);
        assertThat(document.path("observations")).hasSize(1);
        assertThat(sitting.path("shownMeanwhile").asText()).contains("row 406.0");
        assertThat(sitting.path("skin").asText()).contains("column 600");
        assertThat(running.client().getJson("/v1/cases").path("cases")).isEmpty();

        assertShown(sitting, "angleToSkinDeg", record.path("plan"), "\u00b0");
        for (String field : List.of("entryDistanceMm", "targetDepthMm", "pathMm", "leadInMm", "needleLeftMm")) {
            assertShown(sitting, field, record.path("plan"), " mm");
        }
        assertThat(sitting.at("/plan/words").asText())
                .isEqualTo(record.at("/plan/text").asText());
        for (String field : List.of("angleToSkinDeg", "entryDistanceMm", "tipDepthMm", "pathMm")) {
            assertCompared(sitting, field, record);
        }
        assertThat(sitting.path("listed").asText()).contains("Sample, Case One", "signed", "No unfinished case.");
        JsonNode delays = sitting.path("delays");
        assertThat(delays.path("count").asInt()).isPositive();
        System.out.printf(
                Locale.ROOT,
                "From the hand to the drawing, %d drawings: median %.0f ms, 95%% within %.0f ms%n",
                delays.path("count").asInt(),
                delays.path("median").asDouble(),
                delays.path("p95").asDouble());
    }

    @Test
    void anOutOfPlaneCaseIsDoneByTouchOnATelephoneInADarkRoom() throws Exception {
        JsonNode sitting = sit("out-of-plane.mjs", "out-of-plane", SET.outOfPlanePlan(), SET.outOfPlaneNeedle());
        assertNoBarrier(sitting);
        JsonNode record = record(sitting);
        assertThat(record.path("state").asText()).isEqualTo("signed");
        assertThat(record.at("/case/approach").asText()).isEqualTo("outOfPlane");
        assertShown(sitting, "angleToSkinDeg", record.path("plan"), "\u00b0");
        assertShown(sitting, "punctureDistanceMm", record.path("plan"), " mm");
        assertShown(sitting, "targetDepthMm", record.path("plan"), " mm");
        assertThat(sitting.at("/plan/words").asText())
                .isEqualTo(record.at("/plan/text").asText());
        for (String field : List.of("angleToSkinDeg", "punctureDistanceMm", "crossingDepthMm")) {
            assertCompared(sitting, field, record);
        }
        assertThat(sitting.path("sides").asText()).isEqualTo("LEFT, but the image says RIGHT");
        assertThat(record.at("/case/context/sideAnswered").asText()).isEqualTo("left is right, Doe^Jo");
        assertThat(sitting.path("side").asText()).contains("puncture 20.0 mm from the beam");
        assertThat(sitting.path("tooWide"))
                .isNotEmpty()
                .allSatisfy(wide -> assertThat(wide.asBoolean()).isFalse());
    }

    @Test
    void aRunOfFramesIsScrubbedAndObservedOnALaterFrame() throws Exception {
        JsonNode sitting = sit("cine.mjs", "cine", SET.named("cine-needle-advances"));
        assertNoBarrier(sitting);
        assertThat(sitting.path("away").asInt()).as("marks stay on their frame").isZero();
        assertThat(sitting.path("back").asInt()).isPositive();
        assertThat(sitting.path("text").asText()).isEqualTo("frame 20 of 24");
        assertThat(sitting.path("room").asText()).isEqualTo("light");
        assertThat(sitting.path("kept").asText()).as("the room is remembered").isEqualTo("light");
    }

    @Test
    void whatSomebodyElseDidToTheCaseIsNeverOverwrittenUnseen() throws Exception {
        JsonNode sitting = sit("two-people.mjs", "two-people", SET.inPlanePlan());
        assertNoBarrier(sitting);
        assertThat(sitting.path("logged").asInt()).isEqualTo(201);
        assertThat(sitting.path("went").asBoolean())
                .as("a log that goes on stops nobody")
                .isTrue();
        assertThat(sitting.path("others").asInt()).isEqualTo(201);
        assertThat(sitting.at("/stands/marks/target/row").asDouble())
                .as("the other person's mark stands")
                .isEqualTo(380);
        assertThat(sitting.path("goesOn").asBoolean()).isTrue();
        assertThat(sitting.path("events").asInt()).isEqualTo(1);
    }

    private JsonNode sit(String script, String pictures, Sample... frames) throws IOException {
        List<String> command = new ArrayList<>(
                List.of("node", RIG + script, running.client().uri("/").toString(), "target/pages/" + pictures));
        for (Sample frame : frames) {
            Path file = folder.resolve(frame.name() + ".dcm");
            Files.write(file, OBJECTS.file(frame));
            command.add(file.toString());
        }
        return JSON.readTree(OutsideProgram.run(LIMIT_SECONDS, command.toArray(String[]::new)));
    }

    private static void assertNoBarrier(JsonNode sitting) {
        assertThat(sitting.path("barriers")).isEmpty();
        assertThat(sitting.path("policy")).isEmpty();
        assertThat(sitting.path("elsewhere")).isEmpty();
        assertThat(sitting.path("exceptions")).isEmpty();
    }

    private JsonNode record(JsonNode sitting) throws IOException {
        String uid = sitting.path("record").asText();
        return JSON.readTree(running.client().get("/v1/records/" + uid, "application/json"));
    }

    /** What the page's table of the plan says is what the interface answers. */
    private static void assertShown(JsonNode sitting, String field, JsonNode plan, String unit) {
        assertThat(sitting.at("/plan/numbers/" + field + "/1").asText())
                .as(field)
                .isEqualTo(text(plan.path(field), unit, ""));
    }

    /** The same of the table that compares: observed and difference, with what the difference means. */
    private static void assertCompared(JsonNode sitting, String field, JsonNode record) {
        JsonNode row = sitting.at("/comparison/" + field);
        JsonNode difference = record.at("/deviations/0/" + field);
        assertThat(row.path(2).asText()).as(field).isEqualTo(text(record.at("/observations/0/" + field), "", ""));
        assertThat(row.path(3).asText())
                .as(field)
                .startsWith(text(difference, "", "+"))
                .endsWith(
                        difference.path("exceedsUncertainty").asBoolean()
                                ? "more than the measurement's uncertainty"
                                : "no difference that this measurement could show");
    }

    private static String text(JsonNode quantity, String unit, String sign) {
        double value = Math.round(quantity.path("value").asDouble() * 10) / 10.0 + 0.0;
        String plus = sign.isEmpty() || value <= 0 ? "" : sign;
        return String.format(
                Locale.ROOT,
                "%s%.1f \u00b1 %.1f%s",
                plus,
                value,
                quantity.path("expandedUncertainty").asDouble(),
                unit);
    }
}
