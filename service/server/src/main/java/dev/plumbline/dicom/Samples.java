// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

/** The decoded samples of one frame. */
final class Samples {
    private final PixelShape shape;
    private final short[][] bands;
    private final boolean converted;

    /**
     * @param bands one array per sample of a pixel, row after row, unsigned; kept, not copied
     * @param converted whether YBR has become RGB already, as the compressed image itself demands
     */
    Samples(PixelShape shape, short[][] bands, boolean converted) {
        this.shape = shape;
        this.bands = bands;
        this.converted = converted;
    }

    int columns() {
        return shape.columns();
    }

    int rows() {
        return shape.rows();
    }

    boolean converted() {
        return converted;
    }

    int bands() {
        return bands.length;
    }

    int at(int band, int pixel) {
        return bands[band][pixel] & 0xffff;
    }

    int pixels() {
        return bands[0].length;
    }
}
