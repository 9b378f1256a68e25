// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Pixels, judged by DCMTK, GDCM, OpenJPEG and pydicom: lossless encodings sample by sample against what was encoded, all
 * others within 2 grey levels of another decoder.
 */
class FrameDecodingConformanceTest {
    private static final int LOSSY_TOLERANCE = 2;

    @TempDir
    Path folder;

    /** Programs that write each lossless syntax, and the syntax. */
    private static final List<Encoder> LOSSLESS = List.of(
            new Encoder(TransferSyntax.IMPLICIT_LITTLE_ENDIAN, "dcmconv", "+ti"),
            new Encoder(TransferSyntax.EXPLICIT_LITTLE_ENDIAN, "dcmconv", "+te"),
            new Encoder(TransferSyntax.EXPLICIT_BIG_ENDIAN, "dcmconv", "+tb"),
            new Encoder(TransferSyntax.RLE, "dcmcrle"),
            new Encoder(TransferSyntax.RLE, "gdcmconv", "--rle"),
            new Encoder(TransferSyntax.JPEG_LOSSLESS, "dcmcjpeg", "+el"),
            new Encoder(TransferSyntax.JPEG_LOSSLESS_FIRST_ORDER, "dcmcjpeg", "+e1"),
            new Encoder(TransferSyntax.JPEG_LOSSLESS_FIRST_ORDER, "gdcmconv", "--jpeg"),
            new Encoder(TransferSyntax.JPEG_LS, "dcmcjpls", "+el"),
            new Encoder(TransferSyntax.JPEG_LS, "dcmcjpls", "+el", "+in"),
            new Encoder(TransferSyntax.JPEG_LS, "gdcmconv", "--jpegls"),
            new Encoder(TransferSyntax.JPEG_2000_REVERSIBLE, "gdcmconv", "--j2k"));

    private record Encoder(TransferSyntax syntax, List<String> command) {
        Encoder(TransferSyntax syntax, String... command) {
            this(syntax, List.of(command));
        }

        Path encode(Path source, Path folder) throws IOException {
            Path target = java.nio.file.Files.createTempFile(folder, "encoded", ".dcm");
            List<String> words = new ArrayList<>(command);
            words.addAll(List.of(source.toString(), target.toString()));
            OutsideProgram.run(words.toArray(String[]::new));
            return target;
        }

        @Override
        public String toString() {
            return syntax.title() + " by " + String.join(" ", command);
        }
    }

    static Stream<Arguments> lossless() {
        return LOSSLESS.stream()
                .flatMap(encoder -> Stream.of(
                        Arguments.of(encoder, "grey", TestImage.grey(1)),
                        Arguments.of(encoder, "grey cine", TestImage.grey(3)),
                        Arguments.of(encoder, "colour", TestImage.rgb(1)),
                        Arguments.of(encoder, "colour cine", TestImage.rgb(2)),
                        Arguments.of(encoder, "12 of 16 bits", TestImage.grey16()),
                        Arguments.of(encoder, "palette", TestImage.palette())));
    }

    @ParameterizedTest(name = "{0}, {1}")
    @MethodSource("lossless")
    void decodesLosslessEncodingsExactly(Encoder encoder, String kind, DataSet image) throws IOException {
        Path original = TestImage.write(image, folder);
        Path encoded = encoder.encode(original, folder);
        DicomFile file = DicomFile.open(encoded);
        assertThat(file.transferSyntax()).isEqualTo(encoder.syntax());
        for (int frame = 1; frame <= file.frameCount(); frame++) {
            assertThat(RawSamples.of(encoded, frame)).as(kind).isEqualTo(RawSamples.of(original, frame));
            assertThat(Pnm.samples(file.image(frame)))
                    .isEqualTo(Pnm.samples(DicomFile.open(original).image(frame)));
        }
    }

    static Stream<Arguments> lossy() {
        Encoder baseline = new Encoder(TransferSyntax.JPEG_BASELINE, "dcmcjpeg", "+eb", "+un");
        return Stream.of(
                Arguments.of(baseline, TestImage.grey(3), "dcmj2pnm"),
                Arguments.of(baseline, TestImage.rgb(2), "dcmj2pnm"),
                Arguments.of(
                        new Encoder(TransferSyntax.JPEG_BASELINE, "dcmcjpeg", "+eb", "+un", "+s4"),
                        TestImage.rgb(1),
                        "dcmj2pnm"),
                Arguments.of(
                        new Encoder(TransferSyntax.JPEG_BASELINE, "dcmcjpeg", "+eb", "+un", "+cr"),
                        TestImage.rgb(1),
                        "dcmj2pnm"),
                Arguments.of(
                        new Encoder(TransferSyntax.JPEG_EXTENDED, "dcmcjpeg", "+ee", "+un", "+be"),
                        TestImage.grey(1),
                        "dcmj2pnm"),
                Arguments.of(
                        new Encoder(TransferSyntax.JPEG_LS_NEAR_LOSSLESS, "dcmcjpls", "+en", "+un"),
                        TestImage.grey(2),
                        "dcml2pnm"),
                Arguments.of(
                        new Encoder(TransferSyntax.JPEG_LS_NEAR_LOSSLESS, "dcmcjpls", "+en", "+un"),
                        TestImage.rgb(1),
                        "dcml2pnm"));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("lossy")
    void decodesLossyEncodingsAsDcmtkDoes(Encoder encoder, DataSet image, String judge) throws IOException {
        Path encoded = encoder.encode(TestImage.write(image, folder), folder);
        DicomFile file = DicomFile.open(encoded);
        assertThat(file.transferSyntax()).isEqualTo(encoder.syntax());
        for (int frame = 1; frame <= file.frameCount(); frame++) {
            assertThat(Pnm.difference(Pnm.samples(file.image(frame)), Pnm.byDcmtk(judge, encoded, frame)))
                    .isLessThanOrEqualTo(LOSSY_TOLERANCE);
        }
    }

    static Stream<DataSet> forJpeg2000() {
        return Stream.of(TestImage.grey(2), TestImage.rgb(1), TestImage.grey16());
    }

    @ParameterizedTest
    @MethodSource("forJpeg2000")
    void decodesLossyJpeg2000AsGdcmDoes(DataSet image) throws IOException {
        Encoder encoder =
                new Encoder(TransferSyntax.JPEG_2000, "gdcmconv", "--j2k", "--lossy", "--irreversible", "-q", "40");
        Path encoded = encoder.encode(TestImage.write(image, folder), folder);
        assertThat(DicomFile.open(encoded).transferSyntax()).isEqualTo(TransferSyntax.JPEG_2000);
        likeGdcm(encoded);
    }

    @ParameterizedTest
    @ValueSource(strings = {"GDCMJ2K_TextGBR.dcm", "JPEG2000.dcm", "693_J2KI.dcm", "MR_small_jp2klossless.dcm"})
    void decodesJpeg2000OfOthersAsGdcmDoes(String name) throws IOException {
        likeGdcm(RealObject.pydicom(name));
    }

    private void likeGdcm(Path encoded) throws IOException {
        Path plain = new Encoder(TransferSyntax.EXPLICIT_LITTLE_ENDIAN, "gdcmconv", "--raw").encode(encoded, folder);
        int frames = DicomFile.open(encoded).frameCount();
        for (int frame = 1; frame <= frames; frame++) {
            assertThat(Pnm.difference(RawSamples.of(encoded, frame), RawSamples.of(plain, frame)))
                    .isLessThanOrEqualTo(LOSSY_TOLERANCE);
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "SC_rgb_dcmtk_+eb+cr.dcm",
                "SC_rgb_dcmtk_+eb+cy+n1.dcm",
                "SC_rgb_dcmtk_+eb+cy+n2.dcm",
                "SC_rgb_dcmtk_+eb+cy+s2.dcm",
                "SC_rgb_dcmtk_+eb+cy+s4.dcm",
                "SC_rgb_jpeg_dcmtk.dcm",
                "SC_rgb_jpeg_gdcm.dcm",
                "SC_rgb_small_odd_jpeg.dcm"
            })
    void decodesJpegOfOthersAsDcmtkDoes(String name) throws IOException {
        Path file = RealObject.pydicom(name);
        assertThat(Pnm.difference(Pnm.samples(DicomFile.open(file).image(1)), Pnm.byDcmtk("dcmj2pnm", file, 1)))
                .isLessThanOrEqualTo(LOSSY_TOLERANCE);
    }

    /** It says RGB, but its JPEG is subsampled YCbCr; DCMTK is told to look at the JPEG as well. */
    @Test
    void believesTheJpegRatherThanAWrongColourSpaceInTheObject() throws IOException {
        Path file = RealObject.pydicom("SC_rgb_jpeg_lossy_gdcm.dcm");
        assertThat(Pnm.difference(Pnm.samples(DicomFile.open(file).image(1)), Pnm.byDcmtk("dcmj2pnm", file, 1, "+cg")))
                .isLessThanOrEqualTo(LOSSY_TOLERANCE);
    }

    /** DCMTK rounds an inverted grey down and takes 127.5 for the middle of Cb and Cr. */
    static Stream<Arguments> plain() {
        return Stream.of(
                Arguments.of("MONOCHROME1", TestImage.grey(1).put(Tag.PHOTOMETRIC_INTERPRETATION, "MONOCHROME1"), 1),
                Arguments.of("RGB by plane", TestImage.planar(), 0),
                Arguments.of("YBR_FULL", TestImage.rgb(1).put(Tag.PHOTOMETRIC_INTERPRETATION, "YBR_FULL"), 2),
                Arguments.of("YBR_FULL_422", TestImage.subsampled(), 2),
                Arguments.of("PALETTE COLOR", TestImage.palette(), 0),
                Arguments.of("12 bits, no window", TestImage.grey16(), 1));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("plain")
    void showsPlainPixelsAsDcmtkDoes(String kind, DataSet image, int tolerance) throws IOException {
        Path file = TestImage.write(image, folder);
        assertThat(Pnm.difference(Pnm.samples(DicomFile.open(file).image(1)), Pnm.byDcmtk("dcm2pnm", file, 1)))
                .as(kind)
                .isLessThanOrEqualTo(tolerance);
    }

    static Stream<Arguments> windowed() {
        return Stream.of("LINEAR", "SIGMOID")
                .flatMap(function -> Stream.of(
                                TestImage.grey16(),
                                TestImage.grey16().put(Tag.PHOTOMETRIC_INTERPRETATION, "MONOCHROME1"),
                                TestImage.grey16()
                                        .put(Tag.RESCALE_INTERCEPT, "-500")
                                        .put(Tag.RESCALE_SLOPE, "0.5"),
                                TestImage.grey16().put(Tag.PIXEL_REPRESENTATION, 1))
                        .map(image -> image.put(Tag.WINDOW_CENTER, "300", "1")
                                .put(Tag.WINDOW_WIDTH, "900", "2")
                                .put(Tag.VOI_LUT_FUNCTION, function)))
                .map(Arguments::of);
    }

    @ParameterizedTest
    @MethodSource("windowed")
    void appliesTheFirstWindowAsDcmtkDoes(DataSet image) throws IOException {
        Path file = TestImage.write(image, folder);
        String function = image.string(Tag.VOI_LUT_FUNCTION).orElseThrow().equals("SIGMOID") ? "+Wfs" : "+Wfl";
        assertThat(Pnm.difference(
                        Pnm.samples(DicomFile.open(file).image(1)),
                        Pnm.byDcmtk("dcm2pnm", file, 1, "+Wi", "1", function)))
                .isLessThanOrEqualTo(1);
    }

    @Test
    void appliesTablesOfValuesOfInterestAndModalityAsDcmtkDoes() throws IOException {
        short[] entries = new short[4096];
        for (int i = 0; i < entries.length; i++) {
            entries[i] = (short) (4095 - i * i / 4095);
        }
        DataSet table =
                new DataSet().put(Tag.LUT_DESCRIPTOR, entries.length, 0, 12).put(Tag.LUT_DATA, widened(entries));
        Path interest = TestImage.write(TestImage.grey16().put(Tag.VOI_LUT_SEQUENCE, List.of(table)), folder);
        assertThat(Pnm.difference(
                        Pnm.samples(DicomFile.open(interest).image(1)),
                        Pnm.byDcmtk("dcm2pnm", interest, 1, "+Wl", "1")))
                .isLessThanOrEqualTo(1);

        table.put(Tag.MODALITY_LUT_TYPE, "US");
        DataSet both = TestImage.grey16()
                .put(Tag.MODALITY_LUT_SEQUENCE, List.of(table))
                .put(Tag.WINDOW_CENTER, "2000")
                .put(Tag.WINDOW_WIDTH, "3000");
        Path modality = TestImage.write(both, folder);
        assertThat(Pnm.difference(
                        Pnm.samples(DicomFile.open(modality).image(1)),
                        Pnm.byDcmtk("dcm2pnm", modality, 1, "+Wi", "1")))
                .isLessThanOrEqualTo(1);
    }

    private static int[] widened(short[] entries) {
        int[] wide = new int[entries.length];
        for (int i = 0; i < wide.length; i++) {
            wide[i] = entries[i] & 0xffff;
        }
        return wide;
    }

    @Test
    void showsTheRealUltrasoundImageAsOthersDo() throws IOException {
        Path file = RealObject.ultrasoundImage();
        int[] ours = Pnm.samples(DicomFile.open(file).image(1));
        assertThat(ours).isEqualTo(Pnm.byDcmtk("dcm2pnm", file, 1));
        assertThat(ours).isEqualTo(byPydicom(file, 1));
    }

    @Test
    void showsEveryFrameOfTheRealCineAsOthersDo() throws IOException {
        Path path = RealObject.ultrasoundCine();
        DicomFile file = DicomFile.open(path);
        assertThat(file.frameCount()).isEqualTo(10);
        for (int frame = 1; frame <= file.frameCount(); frame++) {
            int[] ours = Pnm.samples(file.image(frame));
            assertThat(ours).isEqualTo(Pnm.byDcmtk("dcm2pnm", path, frame));
            assertThat(ours).isEqualTo(byPydicom(path, frame));
        }
    }

    /** 8-bit RGB by pydicom and numpy, palette applied. */
    private static int[] byPydicom(Path file, int frame) {
        String script = """
                import sys, numpy as np
                from pydicom import dcmread
                from pydicom.pixel_data_handlers.util import apply_color_lut, convert_color_space
                d = dcmread(sys.argv[1]); a = d.pixel_array
                a = a[int(sys.argv[2]) - 1] if int(d.get('NumberOfFrames', 1)) > 1 else a
                a = apply_color_lut(a, d) >> 8 if d.PhotometricInterpretation == 'PALETTE COLOR' else a
                ybr = d.PhotometricInterpretation.startswith('YBR')
                a = convert_color_space(a, d.PhotometricInterpretation, 'RGB') if ybr else a
                sys.stdout.buffer.write(a.astype(np.uint8).tobytes())
                """;
        byte[] bytes = OutsideProgram.run("/usr/bin/python3", "-c", script, file.toString(), Integer.toString(frame));
        int[] samples = new int[bytes.length];
        for (int i = 0; i < bytes.length; i++) {
            samples[i] = bytes[i] & 0xff;
        }
        return samples;
    }

    @Test
    void convertsYbrAsPydicomDoes() throws IOException {
        for (DataSet image :
                List.of(TestImage.rgb(1).put(Tag.PHOTOMETRIC_INTERPRETATION, "YBR_FULL"), TestImage.subsampled())) {
            Path file = TestImage.write(image, folder);
            assertThat(Pnm.difference(Pnm.samples(DicomFile.open(file).image(1)), byPydicom(file, 1)))
                    .isLessThanOrEqualTo(1);
        }
    }

    @Test
    void refusesByNameWhatNoDecoderHereCanRead() {
        refuses("SC_rgb_rle_16bit.dcm", "RLE of colour with 16 bits per sample");
        refuses("SC_rgb_rle_32bit.dcm", "BitsAllocated (0028,0100) is 32");
    }

    @Test
    void refusesTwelveBitLossyJpegByName() throws IOException {
        Path encoded = new Encoder(TransferSyntax.JPEG_EXTENDED, "dcmcjpeg", "+ee", "+bt")
                .encode(TestImage.write(TestImage.grey16(), folder), folder);
        assertThatThrownBy(() -> DicomFile.open(encoded).image(1))
                .isInstanceOfSatisfying(
                        Refusal.class,
                        refusal -> assertThat(refusal.problem()).isInstanceOf(Problem.UnsupportedObject.class))
                .hasMessageContaining("12 bits");
    }

    private static void refuses(String name, String words) {
        assertThatThrownBy(() -> DicomFile.open(RealObject.pydicom(name)).image(1))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining(words);
    }

    @Test
    void writesObjectsThatOthersFindWellFormed() {
        DataSet region = TestImage.region(0.01, 0.02);
        for (DataSet image : List.of(
                TestImage.withRegions(TestImage.grey(1), region),
                TestImage.withRegions(TestImage.rgb(3), region, region))) {
            Path file = TestImage.write(image, folder);
            String report = new String(
                    OutsideProgram.run("sh", "-c", "dciodvfy -new \"$0\" 2>&1 || true", file.toString()),
                    StandardCharsets.UTF_8);
            assertThat(report).contains("Image\n").doesNotContain("Error");
            assertThat(new String(OutsideProgram.run("dcmdump", file.toString()), StandardCharsets.UTF_8))
                    .contains("[PLUMBLINE_0_1]")
                    .contains("SequenceOfUltrasoundRegions");
        }
    }
}
