// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import dev.plumbline.geometry.Calibration;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FrameExplanationTest {
    @TempDir
    Path folder;

    @Test
    void saysWhichRegionIsUsedAndWhy() throws IOException {
        DataSet left = TestImage.region(0.01, 0.01).put(Tag.REGION_LOCATION_MAX_X1, 19);
        DataSet right = TestImage.region(-0.02, 0.03).put(Tag.REGION_LOCATION_MIN_X0, 20);
        DataSet doppler =
                TestImage.region(0.01, 0.5).put(Tag.REGION_SPATIAL_FORMAT, 3).put(Tag.REGION_LOCATION_MIN_Y0, 40);
        FrameExplanation explained = explain(TestImage.withRegions(TestImage.grey(1), left, right, doppler));

        assertThat(explained.calibration()).hasValueSatisfying(calibration -> {
            assertThat(calibration.source()).isEqualTo(Calibration.Source.ULTRASOUND_REGIONS);
            assertThat(calibration.region().orElseThrow().index()).isEqualTo(1);
        });
        assertThat(explained.widthMm().orElseThrow()).isCloseTo(44 * 0.2, within(1e-9));
        assertThat(explained.depthMm().orElseThrow()).isCloseTo(48 * 0.3, within(1e-9));
        assertThat(explained.regions()).extracting("used").containsExactly(false, true, false);
        assertThat(explained.text())
                .contains("Frame 1 of 1, 64 x 48 pixels.")
                .contains("Scale from an ultrasound region: 0.20000 mm per column and 0.30000 mm per row;"
                        + " the area is 8.8 mm wide and 14.4 mm deep.")
                .contains("Region 2, columns 20 to 63, rows 0 to 47:")
                .contains("Region 3, columns 0 to 63, rows 40 to 47: not measured in, because its spatial format"
                        + " (0018,6012) is 3");
        assertThat(explained.doubts()).anyMatch(doubt -> doubt.contains("bends angles"));
    }

    @Test
    void doubtsAScaleThatPixelSpacingContradicts() throws IOException {
        DataSet image = TestImage.withRegions(TestImage.grey(1), TestImage.region(0.01, 0.01));
        assertThat(explain(image.put(Tag.PIXEL_SPACING, "0.1", "0.1")).doubts()).isEmpty();
        assertThat(explain(image.put(Tag.PIXEL_SPACING, "0.1005", "0.1005")).doubts())
                .isEmpty();
        assertThat(explain(image.put(Tag.PIXEL_SPACING, "0.102", "0.102")).doubts())
                .anyMatch(doubt -> doubt.contains("Pixel Spacing says"));
    }

    @Test
    void fallsBackToPixelSpacingOnlyWithoutRegions() throws IOException {
        FrameExplanation spacing = explain(TestImage.grey(1).put(Tag.PIXEL_SPACING, "0.2", "0.1"));
        assertThat(spacing.calibration().orElseThrow().source()).isEqualTo(Calibration.Source.PIXEL_SPACING);
        assertThat(spacing.widthMm().orElseThrow()).isCloseTo(6.4, within(1e-9));
        assertThat(spacing.depthMm().orElseThrow()).isCloseTo(9.6, within(1e-9));

        DataSet unusable = TestImage.withRegions(
                TestImage.grey(1).put(Tag.PIXEL_SPACING, "0.2", "0.1"), TestImage.region(0, 0.01));
        FrameExplanation none = explain(unusable);
        assertThat(none.calibration()).isEmpty();
        assertThat(none.widthMm()).isEmpty();
        assertThat(none.text()).contains("No scale").contains("delta (0018,602C) or (0018,602E) is zero");
    }

    @Test
    void saysHowToSupplyAMissingScale() throws IOException {
        FrameExplanation explained = explain(TestImage.grey(3));
        assertThat(explained.frameCount()).isEqualTo(3);
        assertThat(explained.calibration()).isEmpty();
        assertThat(explained.text()).contains("No scale").contains("or state the scale");
    }

    @Test
    void answersEveryFieldOfTheContractAndNullForWhatIsUnknown() throws IOException {
        DataSet image = TestImage.withRegions(TestImage.grey(2), TestImage.region(0.01, 0.02));
        JsonNode answer = FrameExplanationJson.of(explain(image));
        assertThat(answer.get("frameCount").asInt()).isEqualTo(2);
        JsonNode calibration = answer.get("calibration");
        assertThat(calibration.get("source").asText()).isEqualTo("ultrasoundRegions");
        assertThat(calibration.get("mmPerColumn").asDouble()).isEqualTo(0.1);
        assertThat(calibration.get("mmPerRow").asDouble()).isEqualTo(0.2);
        assertThat(calibration.get("region").toString())
                .isEqualTo("{\"index\":0,\"minColumn\":0,\"minRow\":0,\"maxColumn\":63,\"maxRow\":47}");
        assertThat(calibration.get("widthMm").asDouble()).isCloseTo(6.4, within(1e-9));
        assertThat(calibration.get("depthMm").asDouble()).isCloseTo(9.6, within(1e-9));
        assertThat(calibration.get("doubts").isArray()).isTrue();
        assertThat(answer.get("text").asText()).startsWith("Frame 1 of 2");

        JsonNode none = FrameExplanationJson.of(explain(TestImage.grey(1).put(Tag.PIXEL_DATA, new byte[48 * 64])));
        assertThat(none.get("calibration").get("source").asText()).isEqualTo("none");
        for (String field : List.of("mmPerColumn", "mmPerRow", "region", "widthMm", "depthMm")) {
            assertThat(none.get("calibration").get(field).isNull()).as(field).isTrue();
        }
        assertThat(none.get("probe").get("kind").asText()).isEqualTo("unknown");
        assertThat(none.get("probe").get("confidence").asText()).isEqualTo("low");
        for (String field : List.of("footprintMm", "arcRadiusMm", "midpoint")) {
            assertThat(none.get("probe").get(field).isNull()).as(field).isTrue();
        }
    }

    @Test
    void doubtsRegionsBeyondTheImageAndUnusualScales() throws IOException {
        DataSet beyond = TestImage.region(0.2, 0.2).put(Tag.REGION_LOCATION_MAX_X1, 64);
        assertThat(explain(TestImage.withRegions(TestImage.grey(1), beyond)).doubts())
                .anyMatch(doubt -> doubt.contains("Region 1 reaches beyond the image"))
                .anyMatch(doubt -> doubt.contains("unusual"));
    }

    @Test
    void explainsARealObjectAfterRegionsWereAdded() throws IOException {
        DicomFile real = DicomFile.open(RealObject.ultrasoundImage());
        DataSet copy = new DataSet();
        real.header().tags().stream().filter(tag -> tag >>> 16 > 2).forEach(tag -> copy.copy(tag, real.header()));
        BufferedImage pixels = real.image(1);
        int[] samples = Pnm.samples(pixels);
        byte[] bytes = new byte[samples.length];
        for (int i = 0; i < samples.length; i++) {
            bytes[i] = (byte) samples[i];
        }
        DataSet region =
                TestImage.region(0.05, 0.05).put(Tag.REGION_LOCATION_MAX_X1, 79).put(Tag.REGION_LOCATION_MAX_Y1, 59);
        FrameExplanation explained = explain(
                TestImage.withRegions(copy.put(Tag.PLANAR_CONFIGURATION, 0).put(Tag.PIXEL_DATA, bytes), region));
        assertThat(explained.widthMm().orElseThrow()).isCloseTo(40, within(1e-9));
        assertThat(explained.depthMm().orElseThrow()).isCloseTo(30, within(1e-9));
    }

    @Test
    void drawsItsRegionsWithoutTouchingWhatLiesInside() throws IOException {
        DicomFile file = DicomFile.open(
                TestImage.write(TestImage.withRegions(TestImage.grey(1), TestImage.region(0.1, 0.1)), folder));
        BufferedImage picture = file.picture(1, new Appearance(Optional.empty(), false, true, true, Optional.empty()));
        assertThat(picture.getWidth()).isEqualTo(TestImage.COLUMNS);
        assertThat(picture.getHeight()).isEqualTo(TestImage.ROWS);
        assertThat(picture.getRGB(1, 30) & 0xffffff).isEqualTo(0x00c8ff);
        int grey = TestImage.sample(0, 42, 12, 0);
        assertThat(picture.getRGB(12, 42) & 0xffffff).isEqualTo(grey << 16 | grey << 8 | grey);
    }

    private FrameExplanation explain(DataSet image) throws IOException {
        return DicomFile.open(TestImage.write(image, folder)).explain(1);
    }
}
