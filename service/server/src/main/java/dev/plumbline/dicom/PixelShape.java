// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

/**
 * What the image pixel module states, as far as the size of the pixel data depends on it.
 *
 * @param samples per pixel
 * @param photometric photometric interpretation, a defined term of PS3.3 C.7.6.3.1.2
 */
record PixelShape(int rows, int columns, int samples, int bitsAllocated, int frames, String photometric) {
    static final int MAX_SIDE = 8192;
    static final int MAX_FRAMES = 20_000;
    private static final int BITS_PER_BYTE = 8;

    /** Bytes of plain pixel data, without the pad byte. */
    long nativeLength() {
        long bits = Math.multiplyExact(bitsPerFrame(), (long) frames);
        return Math.addExact(bits, BITS_PER_BYTE - 1L) / BITS_PER_BYTE;
    }

    /** Bytes of one plain frame. */
    long frameLength() {
        return bitsPerFrame() / BITS_PER_BYTE;
    }

    private long bitsPerFrame() {
        // Cb and Cr stand once for two pixels: PS3.3 C.7.6.3.1.2, YBR_FULL_422
        int stored = photometric.equals("YBR_FULL_422") ? 2 : samples;
        long pixels = Math.multiplyExact((long) rows, (long) columns);
        return Math.multiplyExact(Math.multiplyExact(pixels, (long) stored), (long) bitsAllocated);
    }
}
