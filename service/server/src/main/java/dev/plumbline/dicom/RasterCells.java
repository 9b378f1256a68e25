// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.awt.image.ComponentSampleModel;
import java.awt.image.DataBuffer;
import java.awt.image.Raster;

/** Samples of a raster: straight from its buffer where that holds one sample a cell, else asked for one by one. */
final class RasterCells {
    private RasterCells() {}

    static Samples.Cells of(Raster raster) {
        int columns = raster.getWidth();
        boolean whole = raster.getSampleModelTranslateX() == 0 && raster.getSampleModelTranslateY() == 0;
        if (!whole || !(raster.getSampleModel() instanceof ComponentSampleModel model)) {
            return (band, pixel) ->
                    raster.getSample(raster.getMinX() + pixel % columns, raster.getMinY() + pixel / columns, band);
        }
        DataBuffer buffer = raster.getDataBuffer();
        int[] offsets = model.getBandOffsets();
        int[] banks = model.getBankIndices();
        int step = model.getPixelStride();
        int line = model.getScanlineStride();
        return line == step * columns
                ? (band, pixel) -> buffer.getElem(banks[band], offsets[band] + pixel * step)
                : (band, pixel) ->
                        buffer.getElem(banks[band], offsets[band] + pixel / columns * line + pixel % columns * step);
    }
}
