// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.util.Set;

/**
 * How samples are to be understood. Source: DICOM PS3.3, C.7.6.3.1.
 *
 * @param bitsStored per sample, the lowest ones
 * @param signed whether samples are two's complement
 * @param planar whether each sample plane is stored on its own
 */
record ImageDescription(PixelShape shape, int bitsStored, boolean signed, boolean planar) {
    private static final Set<String> GREY = Set.of("MONOCHROME1", "MONOCHROME2");
    private static final Set<String> COLOUR = Set.of("RGB", "YBR_FULL", "YBR_FULL_422", "YBR_RCT", "YBR_ICT");
    /** A sample between the native decoders and the raster. */
    private static final int NATIVE_BYTES = Integer.BYTES;

    static final String PALETTE = "PALETTE COLOR";

    static ImageDescription of(DataSet header, PixelShape shape) {
        int allocated = shape.bitsAllocated();
        int stored = header.integer(Tag.BITS_STORED).orElse(allocated);
        int highBit = header.integer(Tag.HIGH_BIT).orElse(stored - 1);
        if (allocated != 8 && allocated != 16) {
            throw Fault.unsupported(
                    Fault.name(Tag.BITS_ALLOCATED) + " is " + allocated, "Send 8 or 16 bits per sample.");
        }
        if (stored < 1 || stored > allocated || highBit != stored - 1) {
            throw Fault.unsupported(
                    Fault.name(Tag.BITS_STORED) + " is " + stored + " and " + Fault.name(Tag.HIGH_BIT) + " " + highBit
                            + " with " + allocated + " bits allocated",
                    "Send samples whose bits are the lowest ones of each cell.");
        }
        samples(shape);
        boolean signed = header.integer(Tag.PIXEL_REPRESENTATION).orElse(0) == 1;
        boolean planar = header.integer(Tag.PLANAR_CONFIGURATION).orElse(0) == 1;
        return new ImageDescription(shape, stored, signed, planar);
    }

    private static void samples(PixelShape shape) {
        String photometric = shape.photometric();
        boolean single = GREY.contains(photometric) || photometric.equals(PALETTE);
        if (!single && !COLOUR.contains(photometric)) {
            throw Fault.unsupported(
                    Fault.name(Tag.PHOTOMETRIC_INTERPRETATION) + " is not one that is taken",
                    "Send MONOCHROME1, MONOCHROME2, PALETTE COLOR, RGB or a YBR form.");
        }
        if (shape.samples() != (single ? 1 : 3)) {
            throw Fault.malformed(Fault.name(Tag.SAMPLES_PER_PIXEL) + " is " + shape.samples()
                    + ", which does not go with the photometric interpretation");
        }
    }

    /**
     * Bytes that decoding and showing one frame takes at most: its samples as they are, what a decoder holds of them, and
     * the image.
     */
    long memory(TransferSyntax syntax) {
        long pixels = (long) shape.rows() * shape.columns();
        long samples = pixels * shape.samples();
        long decoded = samples * shape.bitsAllocated() / Byte.SIZE;
        long held = syntax.nativeCodec() ? decoded + samples * NATIVE_BYTES : 0;
        return decoded + held + pixels * (isGrey() ? 1 : 3);
    }

    boolean isGrey() {
        return GREY.contains(shape.photometric());
    }

    boolean isPalette() {
        return shape.photometric().equals(PALETTE);
    }
}
