// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

/** The pixels of one picture, 8 bits a sample, row by row from the top left; three samples a pixel are red, green, blue. */
public final class SampleFrame {
    private final int columns;
    private final int rows;
    private final int samplesPerPixel;
    private final byte[] pixels;

    SampleFrame(int columns, int rows, int samplesPerPixel, byte[] pixels) {
        if (pixels.length != columns * rows * samplesPerPixel) {
            throw new IllegalArgumentException("The pixels do not fill the picture.");
        }
        this.columns = columns;
        this.rows = rows;
        this.samplesPerPixel = samplesPerPixel;
        this.pixels = pixels;
    }

    public int columns() {
        return columns;
    }

    public int rows() {
        return rows;
    }

    /** 1 for grey, 3 for colour. */
    public int samplesPerPixel() {
        return samplesPerPixel;
    }

    /** A copy. */
    public byte[] pixels() {
        return pixels.clone();
    }

    /** The first sample of a pixel, 0 to 255: grey, or red. */
    public int level(int column, int row) {
        return pixels[(row * columns + column) * samplesPerPixel] & 0xff;
    }
}
