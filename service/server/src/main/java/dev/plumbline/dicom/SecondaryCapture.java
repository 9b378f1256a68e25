// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.awt.image.BufferedImage;
import java.util.List;

/**
 * An annotated frame as a Secondary Capture Image, DICOM PS3.3 A.8.1: RGB, one per frame used. It names the frame it was
 * drawn on and carries no scale of its own, because lengths are measured on the frame.
 */
final class SecondaryCapture {
    static final ObjectHeader.Kind KIND = ObjectHeader.Kind.ANNOTATED_FRAME;
    private static final int COLOURS = 3;

    private SecondaryCapture() {}

    /**
     * @param number of the frame within the record, from 1
     * @param annotated the frame with the drawing on it
     */
    static DataSet of(RecordSource source, FramesUsed.Use use, int number, BufferedImage annotated) {
        Timestamp time = new Timestamp(source.revision().time());
        DataSet object = ObjectHeader.of(source, KIND, KIND.part(number))
                .put(Tag.IMAGE_TYPE, "DERIVED", "SECONDARY")
                .put(Tag.CONVERSION_TYPE, "WSD")
                .put(Tag.INSTANCE_NUMBER, ObjectHeader.instanceNumber(source.revision(), number))
                .put(Tag.CONTENT_DATE, time.date())
                .put(Tag.CONTENT_TIME, time.timeOfDay())
                .putEmpty(Tag.PATIENT_ORIENTATION)
                .put(Tag.LATERALITY, ObjectHeader.laterality(source.revision().document()))
                .put(Tag.BURNED_IN_ANNOTATION, "YES")
                .put(Tag.DERIVATION_DESCRIPTION, "Plan and observation drawn on the frame")
                .put(Tag.SOURCE_IMAGE_SEQUENCE, List.of(sourceImage(use)));
        lossy(object, use.placed().frame().header());
        pixels(object, annotated);
        return object;
    }

    private static DataSet sourceImage(FramesUsed.Use use) {
        return ContentWriter.instance(use.placed().instance())
                .put(Tag.PURPOSE_OF_REFERENCE_CODE_SEQUENCE, List.of(ContentWriter.code(Codes.dcm("121322"))));
    }

    /** What was once compressed with loss stays so. */
    private static void lossy(DataSet object, DataSet frame) {
        for (int tag : new int[] {
            Tag.LOSSY_IMAGE_COMPRESSION, Tag.LOSSY_IMAGE_COMPRESSION_RATIO, Tag.LOSSY_IMAGE_COMPRESSION_METHOD
        }) {
            if (frame.string(tag).isPresent()) {
                object.put(tag, frame.strings(tag).toArray(String[]::new));
            }
        }
    }

    private static void pixels(DataSet object, BufferedImage image) {
        object.put(Tag.SAMPLES_PER_PIXEL, COLOURS)
                .put(Tag.PHOTOMETRIC_INTERPRETATION, "RGB")
                .put(Tag.PLANAR_CONFIGURATION, 0)
                .put(Tag.ROWS, image.getHeight())
                .put(Tag.COLUMNS, image.getWidth())
                .put(Tag.BITS_ALLOCATED, 8)
                .put(Tag.BITS_STORED, 8)
                .put(Tag.HIGH_BIT, 7)
                .put(Tag.PIXEL_REPRESENTATION, 0)
                .put(Tag.PIXEL_DATA, rgb(image));
    }

    /** The samples of a drawing, which is of {@link BufferedImage#TYPE_INT_RGB}. */
    private static byte[] rgb(BufferedImage image) {
        int width = image.getWidth();
        int[] row = new int[width];
        byte[] samples = new byte[width * image.getHeight() * COLOURS];
        int at = 0;
        for (int y = 0; y < image.getHeight(); y++) {
            image.getRaster().getDataElements(0, y, width, 1, row);
            for (int pixel : row) {
                samples[at++] = (byte) (pixel >> 16);
                samples[at++] = (byte) (pixel >> 8);
                samples[at++] = (byte) pixel;
            }
        }
        return samples;
    }
}
