// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.plumbline.dicom.ProbeEstimate.Confidence;
import dev.plumbline.geometry.Probe;
import dev.plumbline.samples.Sample;
import dev.plumbline.samples.SampleSet;
import dev.plumbline.samples.SampleTruth;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Arc2D;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Probe estimates against generated frames whose truth is known, drawn sectors, and real objects. */
class FrameProbeTest {
    private static final double FOOTPRINT_MM = 1;
    private static final double MIDPOINT_PX = 4;

    @TempDir
    Path folder;

    static Stream<Arguments> samples() {
        return Stream.of(1L, 2L)
                .flatMap(seed -> new SampleSet(seed)
                        .all().stream()
                                .filter(sample -> sample.scene().frames() == 1)
                                .map(sample -> Arguments.of(seed, sample)));
    }

    @ParameterizedTest
    @MethodSource("samples")
    void findsKindFaceAndMidpointOfEverySampleWithoutTags(long seed, Sample sample) throws IOException {
        ProbeEstimate probe =
                DicomFile.open(write(untagged(seed, sample))).explain(1).probe();
        SampleTruth.ProbeTruth truth = sample.scene().truths().get(0).probe();
        assertThat(probe.kind()).hasValue(truth.kind());
        assertThat(probe.midpoint())
                .hasValueSatisfying(midpoint ->
                        assertThat(midpoint.distanceTo(truth.midpoint())).isLessThan(MIDPOINT_PX));
        if (probe.footprintMm().isPresent()) {
            assertThat(probe.footprintMm().getAsDouble()).isCloseTo(truth.footprintMm(), within(FOOTPRINT_MM));
        }
        truth.face()
                .ifPresent(face ->
                        assertThat(probe.arcRadiusMm().orElseThrow()).isCloseTo(face.radiusMm(), within(FOOTPRINT_MM)));
    }

    @Test
    void isSureOnlyWhereNothingCanBeCutOff() throws IOException {
        SampleSet set = new SampleSet(1);
        assertThat(probe(untagged(1, set.inPlanePlan())).confidence()).isEqualTo(Confidence.HIGH);
        DataSet shifted = untagged(1, set.inPlanePlan());
        shifted.items(Tag.SEQUENCE_OF_ULTRASOUND_REGIONS).get(0).put(Tag.REFERENCE_PIXEL_PHYSICAL_VALUE_Y, 2.0);
        assertThat(probe(shifted).confidence()).isEqualTo(Confidence.LOW);
        DataSet unstated = untagged(1, set.inPlanePlan());
        unstated.items(Tag.SEQUENCE_OF_ULTRASOUND_REGIONS).get(0).remove(Tag.REFERENCE_PIXEL_Y0);
        assertThat(probe(unstated).confidence()).isEqualTo(Confidence.LOW);
    }

    @Test
    void leansOnWhatTheObjectNames() throws IOException {
        DataSet named = untagged(1, new SampleSet(1).inPlanePlan()).put(Tag.TRANSDUCER_TYPE, "LINEAR");
        assertThat(probe(named).confidence()).isEqualTo(Confidence.STATED);
        DataSet code = new DataSet()
                .put(Tag.CODE_VALUE, "125252")
                .put(Tag.CODING_SCHEME_DESIGNATOR, "DCM")
                .put(Tag.CODE_MEANING, "Linear ultrasound transducer geometry");
        DataSet coded =
                untagged(1, new SampleSet(1).inPlanePlan()).put(Tag.TRANSDUCER_GEOMETRY_CODE_SEQUENCE, List.of(code));
        assertThat(probe(coded).confidence()).isEqualTo(Confidence.STATED);
    }

    @Test
    void doubtsANameThatTheOutlineContradicts() throws IOException {
        DataSet named = untagged(1, new SampleSet(1).inPlanePlan()).put(Tag.TRANSDUCER_TYPE, "CURVED LINEAR");
        ProbeEstimate probe = probe(named);
        assertThat(probe.kind()).hasValue(Probe.Kind.CURVED);
        assertThat(probe.confidence()).isEqualTo(Confidence.LOW);
        assertThat(probe.footprintMm()).isEmpty();
        assertThat(probe.why()).anyMatch(reason -> reason.contains("other kind"));
    }

    @Test
    void doesNotGuessWhereTheObjectNamesAPhasedArray() throws IOException {
        DataSet named = untagged(1, new SampleSet(1).inPlanePlan()).put(Tag.TRANSDUCER_TYPE, "SECTOR_PHASED");
        assertThat(probe(named).kind()).isEmpty();
    }

    @Test
    void takesASectorFromAPointForNoCurvedArray() throws IOException {
        assertThat(probe(sector(2, 0.05)).kind()).isEmpty();
    }

    @Test
    void fitsDrawnSectorsOfManySizes() throws IOException {
        for (double radiusMm : new double[] {20, 40, 60}) {
            ProbeEstimate probe = probe(sector(radiusMm, 0.2));
            assertThat(probe.kind()).hasValue(Probe.Kind.CURVED);
            assertThat(probe.arcRadiusMm().orElseThrow()).isCloseTo(radiusMm, within(0.02 * radiusMm));
            double chord = 2 * radiusMm * Math.sin(Math.toRadians(30));
            assertThat(probe.footprintMm().orElseThrow()).isCloseTo(chord, within(0.02 * chord));
        }
    }

    @Test
    void knowsNothingOfAFlatTopWithOpeningSides() throws IOException {
        DataSet sector = sector(40, 0.2);
        byte[] pixels = sector.bytes(Tag.PIXEL_DATA);
        int columns = sector.integer(Tag.COLUMNS).orElseThrow();
        java.util.Arrays.fill(pixels, 0, 260 * columns, (byte) 0);
        assertThat(probe(sector.put(Tag.PIXEL_DATA, pixels)).kind()).isEmpty();
    }

    @Test
    void knowsNothingOfBlackOrScatteredFrames() throws IOException {
        DataSet black = sector(40, 0.2);
        byte[] pixels = new byte[black.bytes(Tag.PIXEL_DATA).length];
        assertThat(probe(black.put(Tag.PIXEL_DATA, pixels)).kind()).isEmpty();
        Random random = new Random(7);
        for (int i = 0; i < pixels.length / 100; i++) {
            pixels[random.nextInt(pixels.length)] = (byte) 200;
        }
        assertThat(probe(black.put(Tag.PIXEL_DATA, pixels)).kind()).isEmpty();
    }

    /** A cardiac sector without a scale; no curved array and no length may come out. */
    @Test
    void inventsNothingForRealObjects() throws IOException {
        for (Path real : List.of(RealObject.ultrasoundCine(), RealObject.ultrasoundImage())) {
            ProbeEstimate probe = DicomFile.open(real).explain(1).probe();
            assertThat(probe.confidence()).isEqualTo(Confidence.LOW);
            assertThat(probe.footprintMm()).isEmpty();
            assertThat(probe.arcRadiusMm()).isEmpty();
        }
    }

    private ProbeEstimate probe(DataSet object) throws IOException {
        return DicomFile.open(write(object)).explain(1).probe();
    }

    private Path write(DataSet object) {
        return TestImage.write(object, folder);
    }

    private static DataSet untagged(long seed, Sample sample) {
        SampleSet set = new SampleSet(seed);
        return new SampleObjects(set).object(sample, set.render(sample)).remove(Tag.TRANSDUCER_TYPE);
    }

    /** Speckle in a sector of 60 degrees, 800 x 600 pixels, the face's arc at the top. */
    private static DataSet sector(double radiusMm, double mmPerPixel) {
        BufferedImage image = new BufferedImage(800, 600, BufferedImage.TYPE_BYTE_GRAY);
        Graphics2D pen = image.createGraphics();
        double radius = radiusMm / mmPerPixel;
        double outer = radius + 380;
        double centerRow = 40 - radius * Math.cos(Math.toRadians(30));
        pen.setColor(Color.WHITE);
        pen.fill(new Arc2D.Double(400 - outer, centerRow - outer, 2 * outer, 2 * outer, -120, 60, Arc2D.PIE));
        pen.setColor(Color.BLACK);
        pen.fill(new Arc2D.Double(400 - radius, centerRow - radius, 2 * radius, 2 * radius, 0, 360, Arc2D.PIE));
        byte[] pixels = ((DataBufferByte) image.getRaster().getDataBuffer()).getData();
        Random random = new Random(42);
        for (int i = 0; i < pixels.length; i++) {
            double rayleigh = Math.sqrt(-2 * Math.log(1 - random.nextDouble()));
            pixels[i] = pixels[i] == 0 ? 0 : (byte) Math.min(255, 60 * rayleigh);
        }
        DataSet region = TestImage.region(mmPerPixel / 10, mmPerPixel / 10)
                .put(Tag.REGION_LOCATION_MAX_X1, 799)
                .put(Tag.REGION_LOCATION_MAX_Y1, 599);
        return TestImage.withRegions(TestImage.grey(1), region)
                .put(Tag.ROWS, 600)
                .put(Tag.COLUMNS, 800)
                .put(Tag.PIXEL_DATA, pixels);
    }
}
