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

    Samples decode(byte[] frame) {
        boolean subsampled = shape.photometric().equals("YBR_FULL_422");
        return new Samples(shape, subsampled ? subsampled(frame) : full(frame), false);
    }

    private short[][] full(byte[] frame) {
        int pixels = shape.rows() * shape.columns();
        short[][] bands = new short[shape.samples()][pixels];
        int step = description.planar() ? 1 : shape.samples();
        for (int band = 0; band < shape.samples(); band++) {
            int cell = description.planar() ? band * pixels : band;
            for (int pixel = 0; pixel < pixels; pixel++, cell += step) {
                bands[band][pixel] = (short) sample(frame, cell);
            }
        }
        return bands;
    }

    /** Two luminances, then the pair's common Cb and Cr. */
    private short[][] subsampled(byte[] frame) {
        if (shape.columns() % 2 != 0 || shape.bitsAllocated() != 8) {
            throw Fault.malformed(Fault.name(Tag.COLUMNS) + " is odd, or samples have more than 8 bits, which"
                    + " YBR_FULL_422 cannot have");
        }
        int pixels = shape.rows() * shape.columns();
        short[][] bands = new short[3][pixels];
        for (int pixel = 0, cell = 0; pixel < pixels; pixel += 2, cell += 4) {
            for (int half = 0; half < 2; half++) {
                bands[0][pixel + half] = (short) sample(frame, cell + half);
                bands[1][pixel + half] = (short) sample(frame, cell + 2);
                bands[2][pixel + half] = (short) sample(frame, cell + 3);
            }
        }
        return bands;
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
