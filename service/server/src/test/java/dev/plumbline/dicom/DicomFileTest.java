// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.geometry.PixelSize;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Region;
import dev.plumbline.geometry.UltrasoundRegion;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DicomFileTest {
    @TempDir
    Path folder;

    @Test
    void readsBackWhatItWrote() throws IOException {
        DicomFile file = open(TestImage.rgb(3));
        assertThat(file.sopClassUid()).isEqualTo(FrameClass.US_MULTIFRAME);
        assertThat(file.sopInstanceUid()).isEqualTo("2.25.42");
        assertThat(file.transferSyntax()).isEqualTo(TransferSyntax.EXPLICIT_LITTLE_ENDIAN);
        assertThat(file.frameCount()).isEqualTo(3);
        assertThat(file.isImage()).isTrue();
        assertThat(file.header().string(Tag.PATIENT_NAME)).hasValue("Pattern^Test");
        assertThat(file.header().string(Tag.IMPLEMENTATION_VERSION_NAME)).hasValue("PLUMBLINE_0_1");
        assertThat(file.header().string(Tag.IMPLEMENTATION_CLASS_UID))
                .hasValueSatisfying(uid -> assertThat(uid).startsWith("2.25.").matches(UidSyntax::holds));
        assertThat(file.header().vr(Tag.ACCESSION_NUMBER)).hasValue("SH");
        assertThat(file.header().string(Tag.ACCESSION_NUMBER)).isEmpty();
    }

    /** A widespread library of viewers writes 00\\02 in place of 00\\01 (PS3.10 7.1). */
    @Test
    void anotherVersionOfTheMetaInformationIsNoReasonToRefuse() throws IOException {
        Path file = TestImage.write(TestImage.rgb(1), folder);
        byte[] bytes = Files.readAllBytes(file);
        byte[] version = {2, 0, 1, 0, 'O', 'B', 0, 0, 2, 0, 0, 0, 0, 1};
        int at = new String(bytes, StandardCharsets.ISO_8859_1)
                .indexOf(new String(version, StandardCharsets.ISO_8859_1));
        assertThat(at).isPositive();
        bytes[at + version.length - 1] = 2;
        Files.write(file, bytes);
        assertThat(DicomFile.open(file).sopInstanceUid()).isEqualTo("2.25.42");
    }

    @Test
    void writesTheSameBytesForTheSameDataSet() {
        assertThat(DicomFile.encode(TestImage.rgb(2))).isEqualTo(DicomFile.encode(TestImage.rgb(2)));
    }

    @Test
    void writesTextAsUtf8() {
        byte[] bytes = DicomFile.encode(TestImage.grey(1).put(Tag.PATIENT_NAME, "Prüf^Jürgen=試験^無名"));
        assertThat(new String(bytes, StandardCharsets.UTF_8)).contains("Prüf^Jürgen=試験^無名");
    }

    @Test
    void keepsWordsAndBytesOfBulkData() {
        DataSet dataSet = new DataSet()
                .put(Tag.ICC_PROFILE, new byte[] {1, 2, 3})
                .put(Tag.PIXEL_DATA, new short[] {0x0102, (short) 0xfffe});
        assertThat(dataSet.bytes(Tag.ICC_PROFILE)).containsExactly(1, 2, 3, 0);
        assertThat(dataSet.bytes(Tag.PIXEL_DATA)).containsExactly(2, 1, -2, -1);
        assertThat(dataSet.vr(Tag.PIXEL_DATA)).hasValue("OW");
        assertThat(dataSet.remove(Tag.PIXEL_DATA).holds(Tag.PIXEL_DATA)).isFalse();
    }

    @Test
    void givesOneFrameAtATime() throws IOException {
        DicomFile file = open(TestImage.rgb(3));
        for (int frame = 1; frame <= 3; frame++) {
            BufferedImage image = file.image(frame);
            assertThat(image.getType()).isEqualTo(BufferedImage.TYPE_3BYTE_BGR);
            for (int band = 0; band < 3; band++) {
                assertThat(image.getRaster().getSample(17, 11, band))
                        .isEqualTo(TestImage.sample(frame - 1, 11, 17, band));
            }
        }
    }

    @Test
    void refusesFrameNumbersThatDoNotExist() throws IOException {
        DicomFile file = open(TestImage.grey(2));
        for (int number : new int[] {Integer.MIN_VALUE, 0, 3, Integer.MAX_VALUE}) {
            assertProblem(() -> file.image(number), Problem.FrameNumberOutOfRange.class);
            assertProblem(() -> file.geometry(number), Problem.FrameNumberOutOfRange.class);
        }
    }

    @Test
    void refusesAnEnhancedVolumeByName() throws IOException {
        DicomFile file = open(TestImage.grey(1).put(Tag.SOP_CLASS_UID, "1.2.840.10008.5.1.4.1.1.6.2"));
        assertThat(file.isImage()).isFalse();
        assertThatThrownBy(() -> file.geometry(1))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("Enhanced US Volume");
    }

    @Test
    void takesEveryFrameClass() throws IOException {
        for (String sopClass : List.of(
                "1.2.840.10008.5.1.4.1.1.6.1",
                "1.2.840.10008.5.1.4.1.1.6",
                "1.2.840.10008.5.1.4.1.1.3.1",
                "1.2.840.10008.5.1.4.1.1.3",
                "1.2.840.10008.5.1.4.1.1.7",
                "1.2.840.10008.5.1.4.1.1.7.2",
                "1.2.840.10008.5.1.4.1.1.7.4")) {
            assertThat(open(TestImage.grey(1).put(Tag.SOP_CLASS_UID, sopClass)).isImage())
                    .isTrue();
        }
    }

    @Test
    void readsRegionsAsTheyStand() throws IOException {
        DataSet region = TestImage.region(-0.01, 0.02)
                .put(Tag.REFERENCE_PIXEL_X0, 32)
                .put(Tag.REFERENCE_PIXEL_Y0, -4)
                .put(Tag.REFERENCE_PIXEL_PHYSICAL_VALUE_X, 0.5)
                .put(Tag.REFERENCE_PIXEL_PHYSICAL_VALUE_Y, -1.5);
        FrameGeometry geometry =
                open(TestImage.withRegions(TestImage.grey(1), region)).geometry(1);

        assertThat(geometry.columns()).isEqualTo(TestImage.COLUMNS);
        assertThat(geometry.rows()).isEqualTo(TestImage.ROWS);
        UltrasoundRegion read = geometry.regions().get(0);
        assertThat(read.bounds()).isEqualTo(new Region(0, 0, 0, TestImage.COLUMNS - 1, TestImage.ROWS - 1));
        assertThat(read.deltaX()).isEqualTo(-0.01);
        assertThat(read.deltaY()).isEqualTo(0.02);
        assertThat(read.referenceColumn()).hasValue(32);
        assertThat(read.referenceRow()).hasValue(-4);
        assertThat(read.referenceX()).hasValue(0.5);
        assertThat(read.referenceY()).hasValue(-1.5);
        assertThat(read.whyUnusable()).isEmpty();
        assertThat(read.pixelSize()).isEqualTo(new PixelSize(0.1, 0.2));
        assertThat(read.bounds().contains(new PointPx(64, 48))).isTrue();
    }

    @Test
    void readsPixelSpacingRowsFirst() throws IOException {
        DataSet image = TestImage.grey(1).put(Tag.PIXEL_SPACING, "0.2", "0.1").put(Tag.IMAGER_PIXEL_SPACING, "7", "7");
        assertThat(open(image).geometry(1).pixelSpacing()).hasValue(new PixelSize(0.1, 0.2));
        assertThat(open(image.remove(Tag.PIXEL_SPACING)).geometry(1).pixelSpacing())
                .hasValue(new PixelSize(7, 7));
        assertThat(open(image.put(Tag.IMAGER_PIXEL_SPACING, "0", "7"))
                        .geometry(1)
                        .pixelSpacing())
                .isEmpty();
        assertThat(open(TestImage.grey(1)).geometry(1).pixelSpacing()).isEmpty();
    }

    @Test
    void readsWhatAFrameStatesBeforeWhatAllShare() throws IOException {
        DataSet image = TestImage.withRegions(TestImage.grey(2), TestImage.region(0.01, 0.01));
        DataSet second = new DataSet().put(Tag.SEQUENCE_OF_ULTRASOUND_REGIONS, List.of(TestImage.region(0.03, 0.03)));
        DataSet group = new DataSet().put(Tag.US_IMAGE_DESCRIPTION_SEQUENCE, List.of(second));
        image.put(Tag.PER_FRAME_FUNCTIONAL_GROUPS_SEQUENCE, List.of(new DataSet(), group));
        DicomFile file = open(image);
        assertThat(file.geometry(1).regions().get(0).deltaX()).isEqualTo(0.01);
        assertThat(file.geometry(2).regions().get(0).deltaX()).isEqualTo(0.03);
    }

    @Test
    void namesTheSameEquipmentForFramesOfOneScannerAndTransducer() throws IOException {
        String one = open(TestImage.grey(1).put(Tag.TRANSDUCER_DATA, "L12"))
                .geometry(1)
                .equipment();
        assertThat(open(TestImage.rgb(1).put(Tag.TRANSDUCER_DATA, "L12"))
                        .geometry(1)
                        .equipment())
                .isEqualTo(one);
        assertThat(open(TestImage.grey(1).put(Tag.TRANSDUCER_DATA, "C5"))
                        .geometry(1)
                        .equipment())
                .isNotEqualTo(one);
        DataSet nameless = TestImage.grey(1).remove(Tag.DEVICE_SERIAL_NUMBER).remove(Tag.MANUFACTURER_MODEL_NAME);
        assertThat(open(nameless).geometry(1).equipment()).isEqualTo("series|2.25.41");
    }

    @Test
    void refusesRegionsThatAreNoRectangleOnTheImage() throws IOException {
        DicomFile outside = open(TestImage.withRegions(
                TestImage.grey(1),
                TestImage.region(1, 1).put(Tag.REGION_LOCATION_MIN_X0, 64).put(Tag.REGION_LOCATION_MAX_X1, 70)));
        assertThatThrownBy(() -> outside.geometry(1))
                .hasMessageContaining("Item 1 of SequenceOfUltrasoundRegions (0018,6011) lies outside the image");
        DicomFile inverted = open(TestImage.withRegions(
                TestImage.grey(1),
                TestImage.region(1, 1).put(Tag.REGION_LOCATION_MIN_Y0, 47).put(Tag.REGION_LOCATION_MAX_Y1, 3)));
        assertThatThrownBy(() -> inverted.geometry(1)).hasMessageContaining("before its left or upper one");
        DicomFile missing = open(
                TestImage.withRegions(TestImage.grey(1), TestImage.region(1, 1).remove(Tag.REGION_LOCATION_MAX_X1)));
        assertThatThrownBy(() -> missing.geometry(1)).hasMessageContaining("RegionLocationMaxX1 (0018,601c)");
    }

    @Test
    void refusesAPaletteThatIsMissingOrTooShort() throws IOException {
        DataSet image = TestImage.pixelModule(TestImage.ultrasound(FrameClass.US_IMAGE), "PALETTE COLOR", 1)
                .put(Tag.PIXEL_DATA, TestImage.pattern(1, 1));
        assertThatThrownBy(() -> open(image).image(1)).hasMessageContaining("RedPaletteColorLookupTableDescriptor");
        image.put(Tag.RED_PALETTE_COLOR_LOOKUP_TABLE_DESCRIPTOR, 256, 0, 16)
                .put(Tag.RED_PALETTE_COLOR_LOOKUP_TABLE_DATA, new short[10]);
        assertThatThrownBy(() -> open(image).image(1)).hasMessageContaining("fewer than 256 entries");
    }

    @Test
    void namesTheMemoryThatAFrameWouldNeed() {
        assertThatThrownBy(() -> DecodingMemory.within(Long.MAX_VALUE / 2, () -> "decoded"))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("MB of memory")
                .satisfies(e -> assertThat(((Refusal) e).problem().remedy()).contains("-Xmx"));
    }

    private static final Appearance MASKED = new Appearance(Optional.empty(), true, false, false, Optional.empty());

    @Test
    void masksEverythingOutsideTheRegions() throws IOException {
        DataSet region = TestImage.region(0.01, 0.01)
                .put(Tag.REGION_LOCATION_MIN_X0, 10)
                .put(Tag.REGION_LOCATION_MIN_Y0, 5)
                .put(Tag.REGION_LOCATION_MAX_X1, 20)
                .put(Tag.REGION_LOCATION_MAX_Y1, 9);
        for (DataSet image : List.of(TestImage.grey(1), TestImage.rgb(1))) {
            BufferedImage masked = open(TestImage.withRegions(image, region)).picture(1, MASKED);
            for (int row = 0; row < TestImage.ROWS; row++) {
                for (int column = 0; column < TestImage.COLUMNS; column++) {
                    boolean inside = 10 <= column && column <= 20 && 5 <= row && row <= 9;
                    assertThat(masked.getRaster().getSample(column, row, 0))
                            .isEqualTo(inside ? TestImage.sample(0, row, column, 0) : 0);
                }
            }
        }
        DicomFile without = open(TestImage.grey(1));
        assertThatThrownBy(() -> without.picture(1, MASKED))
                .hasMessageContaining("does not tell where the ultrasound ends");
    }

    private DicomFile open(DataSet dataSet) throws IOException {
        return DicomFile.open(TestImage.write(dataSet, folder));
    }

    private static void assertProblem(
            org.assertj.core.api.ThrowableAssert.ThrowingCallable call, Class<? extends Problem> kind) {
        assertThatThrownBy(call)
                .isInstanceOfSatisfying(
                        Refusal.class, refusal -> assertThat(refusal.problem()).isInstanceOf(kind));
    }
}
