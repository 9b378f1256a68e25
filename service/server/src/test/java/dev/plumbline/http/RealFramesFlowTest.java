// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The whole way on objects of real scanners, out of packages that the tests install. Neither carries ultrasound regions, so
 * the test adds one with pydicom; everything else stays as the scanner wrote it.
 */
class RealFramesFlowTest {
    /** US Image, explicit big endian, 80 x 60 RGB. Source: pydicom 2.3 test files. */
    private static final Path IMAGE =
            Path.of("/usr/lib/python3/dist-packages/pydicom/data/test_files/ExplVR_BigEnd.dcm");

    /** US Multi-frame, RLE, palette, 600 x 430, ten frames. Source: npm dicomweb-client 0.11.3 test data. */
    private static final Path CINE =
            Path.of("src/test/npm/node_modules/dicomweb-client/testData/US-PAL-8-10x-echo.dcm");

    private static final String ADD_REGION = """
            import sys, pydicom
            d = pydicom.dcmread(sys.argv[1])
            r = pydicom.Dataset()
            r.RegionSpatialFormat = 1; r.RegionDataType = 1; r.RegionFlags = 0
            r.RegionLocationMinX0 = 0; r.RegionLocationMinY0 = 0
            r.RegionLocationMaxX1 = d.Columns - 1; r.RegionLocationMaxY1 = d.Rows - 1
            r.PhysicalUnitsXDirection = 3; r.PhysicalUnitsYDirection = 3
            r.PhysicalDeltaX = float(sys.argv[3]); r.PhysicalDeltaY = float(sys.argv[3])
            d.SequenceOfUltrasoundRegions = [r]
            d.save_as(sys.argv[2], write_like_original=False)
            print(d.SOPInstanceUID)
            """;

    @TempDir
    Path folder;

    @Test
    void theImageOfARealScannerIsPlannedOn() throws Exception {
        // 0.5 mm per pixel: a target 20 mm deep below row 5, entry 30 mm away: atan(20/30), hypot(20, 30).
        walk(IMAGE, 0.05, 1, new Marks(80, 5, 40, 45), 33.690, 36.056);
    }

    @Test
    void aFrameOfARealCineIsPlannedOn() throws Exception {
        // 0.1 mm per pixel: 30 mm deep below row 40, entry 45 mm away.
        walk(CINE, 0.01, 7, new Marks(600, 40, 300, 340), 33.690, 54.083);
    }

    /** A level skin line across the image, a midpoint in the target's column. */
    private record Marks(int columns, int skinRow, int column, int targetRow) {}

    private void walk(Path real, double cmPerPixel, int frame, Marks marks, double angleDeg, double pathMm)
            throws Exception {
        assertThat(real).as("./plumbline test installs it").exists();
        Path calibrated = folder.resolve("calibrated.dcm");
        String uid = run("/usr/bin/python3", "-c", ADD_REGION, real.toString(), calibrated.toString(), "" + cmPerPixel)
                .strip();
        try (OpenDoor door = new OpenDoor()) {
            OpenDoor.Answer taken = door.postDicom("/v1/frames", Files.readAllBytes(calibrated));
            assertThat(taken.status()).as(taken.text()).isEqualTo(201);
            OpenDoor.Answer answer = door.post("/v1/records", document(uid, frame, marks, entryMm(marks, cmPerPixel)));
            assertThat(answer.status()).as(answer.text()).isEqualTo(201);
            String record = answer.json().path("recordUid").asText();
            JsonNode plan = door.get("/v1/records/" + record).json().path("plan");
            assertThat(plan.path("angleToSkinDeg").path("value").doubleValue()).isCloseTo(angleDeg, within(0.001));
            assertThat(plan.path("pathMm").path("value").doubleValue()).isCloseTo(pathMm, within(0.001));
            Path report = Files.write(
                    folder.resolve("record.dcm"),
                    door.send(door.request("/v1/records/" + record)
                                    .header("Accept", "application/dicom")
                                    .GET())
                            .response()
                            .body());
            // The cine was anonymised with UIDs under a root that nobody owns; naming it means repeating them.
            assertThat(run("dciodvfy", "-new", report.toString()).lines())
                    .noneMatch(line -> line.startsWith("Error") && !line.contains("Illegal root for UID = <999.999."));
        }
    }

    /** One and a half times the depth. */
    private static double entryMm(Marks marks, double cmPerPixel) {
        return 1.5 * 10 * cmPerPixel * (marks.targetRow - marks.skinRow);
    }

    private static String document(String uid, int frame, Marks marks, double entryMm) {
        return """
                {"schema":"plumbline-case/1","approach":"inPlane","frame":{"sopInstanceUid":"%s","frameNumber":%d},
                 "probe":{"midpoint":{"column":%d,"row":%d},"needleSide":"right"},
                 "marks":{"target":{"column":%d,"row":%d},"skin":[{"column":0,"row":%d},{"column":%d,"row":%d}]},
                 "intent":{"entryDistanceMm":%s},
                 "context":{"block":"femoralNerve","laterality":"right","operator":{"name":"Sample^Performer","role":"performer"}},
                 "signature":{"name":"Sample^Performer","organization":"Sample Hospital","time":"2026-01-05T10:15:00+01:00"}}""".formatted(
                        uid,
                        frame,
                        marks.column,
                        marks.skinRow,
                        marks.column,
                        marks.targetRow,
                        marks.skinRow,
                        marks.columns,
                        marks.skinRow,
                        entryMm);
    }

    private static String run(String... command) throws Exception {
        Process process =
                new ProcessBuilder(List.of(command)).redirectErrorStream(true).start();
        String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor(60, TimeUnit.SECONDS))
                .as(command[0] + " ends")
                .isTrue();
        return output;
    }
}
