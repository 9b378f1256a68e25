// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.util.Set;

/** A decoded frame as it would stand in Explicit VR Little Endian. Source: DICOM PS3.5 8.1, 8.2; PS3.18 8.7.3. */
final class PlainFrame {
    /** Decoding leaves these as the attributes of the object say they are; the YBR forms become RGB on the way. */
    private static final Set<String> LEFT = Set.of("MONOCHROME1", "MONOCHROME2", "PALETTE COLOR", "RGB");

    private PlainFrame() {}

    /**
     * Lossless JPEG is not: the toolkit's decoder leaves the last sample out where its bits end with the last byte of the
     * scan, which nobody should get as lossless.
     */
    static boolean isDescribed(TransferSyntax syntax, PixelShape shape) {
        if (syntax == TransferSyntax.JPEG_LOSSLESS || syntax == TransferSyntax.JPEG_LOSSLESS_FIRST_ORDER) {
            return false;
        }
        return LEFT.contains(shape.photometric())
                || (syntax == TransferSyntax.RLE && shape.photometric().equals("YBR_FULL"));
    }

    /** Sample by sample, or plane by plane where the attributes say so. */
    static byte[] of(Samples samples, ImageDescription description) {
        int cell = description.shape().bitsAllocated() / Byte.SIZE;
        int bands = samples.bands();
        byte[] bytes = new byte[Math.multiplyExact(Math.multiplyExact(samples.pixels(), bands), cell)];
        for (int band = 0; band < bands; band++) {
            for (int pixel = 0; pixel < samples.pixels(); pixel++) {
                int place = description.planar() ? band * samples.pixels() + pixel : pixel * bands + band;
                int sample = samples.at(band, pixel);
                bytes[place * cell] = (byte) sample;
                if (cell == 2) {
                    bytes[place * cell + 1] = (byte) (sample >> Byte.SIZE);
                }
            }
        }
        return bytes;
    }
}
