// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

/** Uncompressed samples. Source: DICOM PS3.5, 8.1.1 and 8.2; PS3.3, C.7.6.3.1.2 (YBR_FULL_422) and C.7.6.3.1.3. */
final class PlainDecoder {
    private final ImageDescription description;
    private final PixelShape shape;
    private final boolean swapped;
    private final boolean bigEndian;

    PlainDecoder(ImageDescription description, boolean swapped, boolean bigEndian) {
        this.description = description;
        this.shape = description.shape();
        this.swapped = swapped;
        this.bigEndian = bigEndian;
    }

    /** @param frame kept, not copied */
    Samples decode(byte[] frame) {
        boolean subsampled = shape.photometric().equals("YBR_FULL_422");
        return new Samples(shape, subsampled ? subsampled(frame) : full(frame), false);
    }

    private Samples.Cells full(byte[] frame) {
        int pixels = shape.rows() * shape.columns();
        int samples = shape.samples();
        return description.planar()
                ? (band, pixel) -> sample(frame, band * pixels + pixel)
                : (band, pixel) -> sample(frame, pixel * samples + band);
    }

    /** Two luminances, then the pair's common Cb and Cr. */
    private Samples.Cells subsampled(byte[] frame) {
        if (shape.columns() % 2 != 0 || shape.bitsAllocated() != 8) {
            throw Fault.malformed(Fault.name(Tag.COLUMNS) + " is odd, or samples have more than 8 bits, which"
                    + " YBR_FULL_422 cannot have");
        }
        return (band, pixel) -> sample(frame, pixel / 2 * 4 + (band == 0 ? pixel % 2 : band + 1));
    }

    private int sample(byte[] frame, int cell) {
        if (shape.bitsAllocated() == 8) {
            return frame[swapped ? cell ^ 1 : cell] & 0xff;
        }
        int low = frame[2 * cell + (bigEndian ? 1 : 0)] & 0xff;
        int high = frame[2 * cell + (bigEndian ? 0 : 1)] & 0xff;
        return high << 8 | low;
    }
}
