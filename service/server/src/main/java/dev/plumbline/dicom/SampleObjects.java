// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.geometry.PixelSize;
import dev.plumbline.geometry.Probe;
import dev.plumbline.geometry.UltrasoundRegion;
import dev.plumbline.record.Uids;
import dev.plumbline.samples.Sample;
import dev.plumbline.samples.SampleFrame;
import dev.plumbline.samples.SampleScene;
import dev.plumbline.samples.SampleSet;
import dev.plumbline.samples.SampleTruth;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Locale;

/**
 * Samples as Ultrasound Image and Ultrasound Multi-frame Image objects, DICOM PS3.3 A.6 and A.7: invented patients, one
 * study and one series each, region calibration of C.8.5.5.
 *
 * <p>A pure function of the set's seed: the same seed gives the same bytes.
 */
public final class SampleObjects {
    private static final String SINGLE_FRAME = "1.2.840.10008.5.1.4.1.1.6.1";
    private static final String MULTI_FRAME = "1.2.840.10008.5.1.4.1.1.3.1";
    private static final int BITS = 8;

    private final SampleSet set;

    public SampleObjects(SampleSet set) {
        this.set = set;
    }

    /** The whole DICOM file. */
    public byte[] file(Sample sample) {
        return DicomFile.encode(object(sample, set.render(sample)));
    }

    /** The object with pictures that are already drawn. */
    public DataSet object(Sample sample, List<SampleFrame> frames) {
        SamplePatient patient = SamplePatient.of(sample.scene().block());
        DataSet object = new DataSet()
                .put(Tag.SPECIFIC_CHARACTER_SET, "ISO_IR 192")
                .put(Tag.SOP_CLASS_UID, frames.size() == 1 ? SINGLE_FRAME : MULTI_FRAME)
                .put(Tag.SOP_INSTANCE_UID, sopInstanceUid(sample));
        patient.describe(object, "sample set " + set.seed());
        image(object, sample, frames);
        scale(object, sample);
        if (frames.size() > 1) {
            cine(object, sample.scene());
        }
        return object;
    }

    public String sopInstanceUid(Sample sample) {
        return Uids.instance("sample set " + set.seed(), 1, sample.name());
    }

    private void image(DataSet object, Sample sample, List<SampleFrame> frames) {
        SampleFrame first = frames.get(0);
        boolean colour = first.samplesPerPixel() > 1;
        object.put(Tag.IMAGE_TYPE, "ORIGINAL", "PRIMARY", "MUSCULOSKELETAL", flowShown(sample) ? "0011" : "0001")
                .put(Tag.INSTANCE_NUMBER, Integer.toString(numberOf(sample)))
                .put(Tag.CONTENT_DATE, SamplePatient.DATE)
                .put(Tag.CONTENT_TIME, String.format(Locale.ROOT, "10%02d00", numberOf(sample)))
                .putEmpty(Tag.PATIENT_ORIENTATION)
                .put(Tag.IMAGE_COMMENTS, "Synthetic: " + sample.shows())
                .put(Tag.BURNED_IN_ANNOTATION, "YES")
                .put(Tag.LOSSY_IMAGE_COMPRESSION, "00")
                .put(Tag.SAMPLES_PER_PIXEL, first.samplesPerPixel())
                .put(Tag.PHOTOMETRIC_INTERPRETATION, colour ? "RGB" : "MONOCHROME2")
                .put(Tag.ROWS, first.rows())
                .put(Tag.COLUMNS, first.columns())
                .put(Tag.ULTRASOUND_COLOR_DATA_PRESENT, flowShown(sample) ? 1 : 0)
                .put(Tag.BITS_ALLOCATED, BITS)
                .put(Tag.BITS_STORED, BITS)
                .put(Tag.HIGH_BIT, BITS - 1)
                .put(Tag.PIXEL_REPRESENTATION, 0)
                .put(Tag.PIXEL_DATA, pixels(frames));
        if (colour) {
            object.put(Tag.PLANAR_CONFIGURATION, 0);
        }
    }

    private int numberOf(Sample sample) {
        return set.all().stream().map(Sample::name).toList().indexOf(sample.name()) + 1;
    }

    private static boolean flowShown(Sample sample) {
        return sample.scene().truths().get(0).scale().regions().stream().anyMatch(region -> region.dataType() == 2);
    }

    private static byte[] pixels(List<SampleFrame> frames) {
        int size = frames.get(0).pixels().length;
        byte[] pixels = new byte[size * frames.size()];
        for (int i = 0; i < frames.size(); i++) {
            System.arraycopy(frames.get(i).pixels(), 0, pixels, i * size, size);
        }
        return pixels;
    }

    private static void scale(DataSet object, Sample sample) {
        SampleTruth truth = sample.scene().truths().get(0);
        boolean curved = truth.probe().kind() == Probe.Kind.CURVED;
        object.put(Tag.TRANSDUCER_TYPE, curved ? "CURVED LINEAR" : "LINEAR")
                .put(Tag.TRANSDUCER_DATA, transducerData(truth.probe()));
        truth.scale().pixelSpacing().ifPresent(pixel -> object.put(Tag.PIXEL_SPACING, spacing(pixel)));
        if (!truth.scale().regions().isEmpty()) {
            object.put(
                    Tag.SEQUENCE_OF_ULTRASOUND_REGIONS,
                    truth.scale().regions().stream().map(SampleObjects::region).toList());
        }
    }

    private static String transducerData(SampleTruth.ProbeTruth probe) {
        return String.format(Locale.ROOT, "SAMPLE %s %.0f MM", probe.kind().name(), probe.footprintMm());
    }

    /** Distance between rows first. Source: DICOM PS3.3, 10.7.1.3. */
    private static String[] spacing(PixelSize pixel) {
        return new String[] {decimal(pixel.mmPerRow()), decimal(pixel.mmPerColumn())};
    }

    /** At most 16 characters, as DS asks. */
    private static String decimal(double value) {
        return new BigDecimal(value)
                .round(new MathContext(10))
                .stripTrailingZeros()
                .toPlainString();
    }

    private static DataSet region(UltrasoundRegion region) {
        return new DataSet()
                .put(Tag.REGION_SPATIAL_FORMAT, region.spatialFormat())
                .put(Tag.REGION_DATA_TYPE, region.dataType())
                .put(Tag.REGION_FLAGS, region.flags().orElse(0))
                .put(Tag.REGION_LOCATION_MIN_X0, region.bounds().minColumn())
                .put(Tag.REGION_LOCATION_MIN_Y0, region.bounds().minRow())
                .put(Tag.REGION_LOCATION_MAX_X1, region.bounds().maxColumn())
                .put(Tag.REGION_LOCATION_MAX_Y1, region.bounds().maxRow())
                .put(Tag.REFERENCE_PIXEL_X0, region.referenceColumn().orElse(0))
                .put(Tag.REFERENCE_PIXEL_Y0, region.referenceRow().orElse(0))
                .put(Tag.PHYSICAL_UNITS_X_DIRECTION, region.unitsX())
                .put(Tag.PHYSICAL_UNITS_Y_DIRECTION, region.unitsY())
                .put(Tag.REFERENCE_PIXEL_PHYSICAL_VALUE_X, region.referenceX().orElse(0))
                .put(Tag.REFERENCE_PIXEL_PHYSICAL_VALUE_Y, region.referenceY().orElse(0))
                .put(Tag.PHYSICAL_DELTA_X, region.deltaX())
                .put(Tag.PHYSICAL_DELTA_Y, region.deltaY());
    }

    private static void cine(DataSet object, SampleScene scene) {
        object.put(Tag.NUMBER_OF_FRAMES, Integer.toString(scene.frames()))
                .putPointer(Tag.FRAME_INCREMENT_POINTER, Tag.FRAME_TIME)
                .put(Tag.FRAME_TIME, decimal(scene.millisecondsPerFrame()))
                .put(
                        Tag.RECOMMENDED_DISPLAY_FRAME_RATE,
                        Long.toString(Math.round(1000 / scene.millisecondsPerFrame())));
    }
}
