// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import dev.plumbline.ScalelessFrame;
import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FrameCommandTest {
    private static final String CASE = """
            {"schema":"plumbline-case/1","approach":"inPlane",
             "frame":{"file":"plain.dcm","scale":{"from":{"column":600,"row":40},"to":{"column":600,"row":440},"distanceMm":50}},
             "probe":{"midpoint":{"column":300,"row":40},"needleSide":"right"},
             "marks":{"target":{"column":300,"row":280},"skin":[{"column":0,"row":40},{"column":640,"row":40}]},
             "intent":{"entryDistanceMm":45},
             "observations":[{"frame":{"file":"./plain.dcm"},"shaft":[{"column":600,"row":80},{"column":360,"row":240}]}],
             "context":{"block":"femoralNerve","laterality":"right"},
             "signature":{"name":"Sample^Performer","time":"2026-01-05T10:15:00+01:00"}}""";

    @TempDir
    Path folder;

    private Path plain;
    private Path withRegion;

    @BeforeEach
    void frames() throws Exception {
        plain = Files.write(folder.resolve("plain.dcm"), ScalelessFrame.PLAIN);
        withRegion = Files.write(folder.resolve("region.dcm"), ScalelessFrame.WITH_REGION);
    }

    private static void refused(Invoked invoked) {
        assertThat(invoked.code()).as(invoked.err()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(invoked.out()).isEmpty();
        assertThat(invoked.err()).doesNotContain("Exception").doesNotContain("\tat ");
    }

    @Test
    void aScaleIsStatedForAFrameWithoutOne() throws Exception {
        JsonNode calibration = Invoked.plumbline("frame", plain, "--scale", "600,40,600,440,50", "--json")
                .json()
                .path("calibration");
        assertThat(calibration.path("source").asText()).isEqualTo("stated");
        assertThat(calibration.path("mmPerColumn").doubleValue()).isCloseTo(0.125, within(1e-12));
        assertThat(Invoked.plumbline("frame", plain, "--scale", "600,40,600,440,50")
                        .out())
                .contains("Scale from a person's statement", "50 mm between two points 400.0 pixels apart", "square");
        refused(Invoked.plumbline("frame", plain, "--scale", "600,40,600,440"));
        refused(Invoked.plumbline("frame", plain, "--scale", "600,40,600,50,5"));
        refused(Invoked.plumbline("frame", withRegion, "--scale", "600,40,600,440,50"));
    }

    @Test
    void aCaseOnSuchAFrameIsPlannedRecordedAndReadBack() throws Exception {
        Path file = Files.writeString(folder.resolve("case.json"), CASE);
        JsonNode plan = Invoked.plumbline("plan", file, "--json").json().path("plan");
        assertThat(plan.path("angleToSkinDeg").path("value").doubleValue()).isCloseTo(33.690, within(0.0005));
        Path out = folder.resolve("record");
        Invoked recorded = Invoked.plumbline("record", file, "--out", out);
        assertThat(recorded.code()).as(recorded.err()).isZero();
        Path report = recorded.out()
                .lines()
                .map(Path::of)
                .filter(path -> path.getFileName().toString().startsWith("sr"))
                .findFirst()
                .orElseThrow();
        JsonNode read = Invoked.plumbline("show", report, "--json").json();
        assertThat(read.path("frame").path("scale").path("distanceMm").doubleValue())
                .isEqualTo(50);
        assertThat(read.path("observations").get(0).path("frame")).isEqualTo(read.path("frame"));
        assertThat(Invoked.plumbline("check", report).code()).isZero();
    }

    @Test
    void aFrameIsShownAsAsked() throws Exception {
        Path out = folder.resolve("shown.png");
        assertThat(Invoked.plumbline("frame", withRegion, "--rendered", out, "--window", "100,100", "--mask")
                        .code())
                .isZero();
        BufferedImage masked = ImageIO.read(out.toFile());
        assertThat(masked.getRaster().getSample(90, 60, 0)).isZero();
        // LINEAR, PS3.3 C.11.2.1.2: (110 - 99.5) / 99 + 0.5 of 255.
        assertThat(masked.getRaster().getSample(110, 60, 0)).isEqualTo(155);
        assertThat(Invoked.plumbline("frame", withRegion, "--rendered", out, "--scale-bar", "--regions")
                        .code())
                .isZero();
        assertThat(ImageIO.read(out.toFile()).getRGB(101, 250) & 0xffffff).isEqualTo(0x00c8ff);
        refused(Invoked.plumbline("frame", plain, "--rendered", out, "--mask"));
        refused(Invoked.plumbline("frame", plain, "--rendered", out, "--scale-bar"));
        refused(Invoked.plumbline("frame", plain, "--rendered", out, "--window", "wide"));
        refused(Invoked.plumbline("frame", plain, "--scale-bar"));
    }
}
