// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

/** The decoded samples of one frame, read from where the decoder left them, so that no frame is held twice. */
final class Samples {
    private final PixelShape shape;
    private final Cells cells;
    private final boolean converted;

    /** Where samples are read from. */
    interface Cells {
        /**
         * One sample in its lowest 16 bits.
         *
         * @param pixel row after row
         */
        int at(int band, int pixel);
    }

    /** @param converted whether YBR has become RGB already, as the compressed image itself demands */
    Samples(PixelShape shape, Cells cells, boolean converted) {
        this.shape = shape;
        this.cells = cells;
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
        return shape.samples();
    }

    int at(int band, int pixel) {
        return cells.at(band, pixel) & 0xffff;
    }

    int pixels() {
        return shape.rows() * shape.columns();
    }
}
