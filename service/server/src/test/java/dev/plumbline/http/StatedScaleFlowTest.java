// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import dev.plumbline.ScalelessFrame;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A frame that tells no scale, measured by its depth ruler: 50 mm over 400 rows, 0.125 mm per pixel. */
class StatedScaleFlowTest {
    private static final String SCALE =
            "{\"from\":{\"column\":600,\"row\":40},\"to\":{\"column\":600,\"row\":440},\"distanceMm\":50}";

    @TempDir
    Path folder;

    private OpenDoor door;

    @BeforeEach
    void open() throws Exception {
        door = new OpenDoor();
        assertThat(door.postDicom("/v1/frames", ScalelessFrame.PLAIN).status()).isEqualTo(201);
    }

    @AfterEach
    void close() throws Exception {
        door.close();
    }

    private static String document(String scale) {
        // 240 rows deep at 0.125 mm: 30 mm; entry 45 mm away: atan(30/45) = 33.690 degrees, path 54.083 mm.
        return """
                {"schema":"plumbline-case/1","approach":"inPlane","frame":{"sopInstanceUid":"%s","scale":%s},
                 "probe":{"midpoint":{"column":300,"row":40},"needleSide":"right"},
                 "marks":{"target":{"column":300,"row":280},"skin":[{"column":0,"row":40},{"column":640,"row":40}]},
                 "intent":{"entryDistanceMm":45},
                 "observations":[{"frame":{"sopInstanceUid":"%s"},
                                  "shaft":[{"column":600,"row":80},{"column":360,"row":240}],
                                  "tip":{"column":300,"row":280},"tipIsTip":true}],
                 "context":{"block":"femoralNerve","laterality":"right"},
                 "signature":{"name":"Sample^Performer","time":"2026-01-05T10:15:00+01:00"}}""".formatted(ScalelessFrame.UID, scale, ScalelessFrame.UID);
    }

    @Test
    void withoutAScaleTheRemedyNamesTheField() throws Exception {
        JsonNode problem = door.post("/v1/plans", document("null")).json();
        assertThat(problem.path("type").asText()).isEqualTo("urn:plumbline:problem:frame-not-calibrated");
        assertThat(problem.path("remedy").asText()).contains("scale").contains("two points");
    }

    @Test
    void planAndComparisonAreMeasuredByIt() throws Exception {
        JsonNode answer = door.post("/v1/comparisons", document(SCALE)).json();
        JsonNode plan = answer.path("plan");
        assertThat(plan.path("angleToSkinDeg").path("value").doubleValue()).isCloseTo(33.690, within(0.0005));
        assertThat(plan.path("pathMm").path("value").doubleValue()).isCloseTo(54.083, within(0.0005));
        assertThat(plan.path("assumptions").toString()).contains("pixelsAreSquare");
        assertThat(plan.path("doubts").toString()).contains("scaleStated").doesNotContain("scaleContradicted");
        JsonNode seen = answer.path("observations").get(0);
        assertThat(seen.path("tipDepthMm").path("value").doubleValue()).isCloseTo(30, within(0.0005));
        assertThat(seen.path("assumptions").toString())
                .as("the same frame has the same scale")
                .contains("pixelsAreSquare")
                .doesNotContain("probeNotMoved");
    }

    @Test
    void theRecordGivesItBack() throws Exception {
        OpenDoor.Answer made = door.post("/v1/records", document(SCALE));
        assertThat(made.status()).as(made.text()).isEqualTo(201);
        String uid = made.json().path("recordUid").asText();
        byte[] report = door.send(door.request("/v1/records/" + uid)
                        .header("Accept", "application/dicom")
                        .GET())
                .response()
                .body();
        JsonNode read = ScalelessFrame.caseOf(Files.write(folder.resolve("record.dcm"), report));
        assertThat(read.path("frame").path("scale").path("distanceMm").doubleValue())
                .isEqualTo(50);
        assertThat(read.path("observations").get(0).path("frame").path("scale"))
                .isEqualTo(read.path("frame").path("scale"));
        assertThat(door.post("/v1/records", read.toString()).status())
                .as("the same case again")
                .isEqualTo(200);
    }

    @Test
    void theFrameIsExplainedByIt() throws Exception {
        JsonNode calibration = door.get("/v1/frames/" + ScalelessFrame.UID + "/1?scale=600,40,600,440,50")
                .json()
                .path("calibration");
        assertThat(calibration.path("source").asText()).isEqualTo("stated");
        assertThat(calibration.path("mmPerRow").doubleValue()).isEqualTo(0.125);
        assertThat(calibration.path("depthMm").doubleValue()).isEqualTo(60);
        assertThat(calibration.path("scale").path("to").path("row").doubleValue())
                .isEqualTo(440);
        JsonNode none = door.get("/v1/frames/" + ScalelessFrame.UID + "/1").json();
        assertThat(none.path("calibration").path("source").asText()).isEqualTo("none");
    }

    @Test
    void refusesWhatIsNoScale() throws Exception {
        for (String scale : new String[] {
            "1,2,3,4", "1,2,3,4,x", "600,40,600,440,0", "-1,40,600,440,50", "600,40,600,900,50", "600,40,600,50,5"
        }) {
            OpenDoor.Answer answer = door.get("/v1/frames/" + ScalelessFrame.UID + "/1?scale=" + scale);
            assertThat(answer.status()).as(scale + answer.text()).isEqualTo(422);
            assertThat(answer.json().path("remedy").asText()).isNotBlank();
        }
        String onMm = "{\"columns\":640,\"rows\":480,\"mmPerColumn\":0.1,\"mmPerRow\":0.1,\"scale\":" + SCALE + "}";
        OpenDoor.Answer mixed =
                door.post("/v1/plans", document("null").replaceFirst("\\{\"sopInstanceUid\"[^}]*}", onMm));
        assertThat(mixed.json().path("type").asText()).isEqualTo("urn:plumbline:problem:contradictory-fields");
        OpenDoor.Answer other = door.post(
                "/v1/comparisons",
                document(SCALE)
                        .replace(
                                "\"" + ScalelessFrame.UID + "\"},",
                                "\"" + ScalelessFrame.UID + "\",\"scale\":" + SCALE.replace("50}", "60}") + "},"));
        assertThat(other.status()).as(other.text()).isEqualTo(422);
        assertThat(other.json().path("pointer").asText()).isEqualTo("/observations/0/frame/scale");
    }

    @Test
    void isRefusedWhereTheFrameTellsItsScale() throws Exception {
        assertThat(door.postDicom("/v1/frames", SampleBodies.PLANNED_FRAME).status())
                .isEqualTo(201);
        OpenDoor.Answer answer = door.post(
                "/v1/plans",
                SampleBodies.DRAFT.replaceFirst("\"frameNumber\":1", "\"frameNumber\":1,\"scale\":" + SCALE));
        assertThat(answer.status()).as(answer.text()).isEqualTo(422);
        assertThat(answer.json().path("pointer").asText()).isEqualTo("/frame/scale");
        assertThat(answer.json().path("detail").asText()).contains(" %");
        assertThat(answer.json().path("remedy").asText()).contains("Leave the scale out");
    }
}
