// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.awt.Transparency;
import java.awt.color.ColorSpace;
import java.awt.image.BufferedImage;
import java.awt.image.ComponentColorModel;
import java.awt.image.DataBuffer;
import java.awt.image.Raster;
import java.awt.image.WritableRaster;

/** Samples of an image, one plane per component, each sample an unsigned number of at most 16 bits. */
final class DecodedPlanes {
    private final int columns;
    private final int rows;
    private final int bits;
    private final int[][] planes;

    /** @param planes one per component, row after row; kept, not copied */
    DecodedPlanes(int columns, int rows, int bits, int[][] planes) {
        this.columns = columns;
        this.rows = rows;
        this.bits = bits;
        this.planes = planes;
    }

    /** Grey or RGB with 8 or 16 bits per sample; three planes are taken for RGB whatever they mean. */
    BufferedImage image() {
        int type = bits <= 8 ? DataBuffer.TYPE_BYTE : DataBuffer.TYPE_USHORT;
        WritableRaster raster = Raster.createInterleavedRaster(type, columns, rows, planes.length, null);
        for (int plane = 0; plane < planes.length; plane++) {
            raster.setSamples(0, 0, columns, rows, plane, planes[plane]);
        }
        int space = planes.length == 1 ? ColorSpace.CS_GRAY : ColorSpace.CS_sRGB;
        ComponentColorModel model =
                new ComponentColorModel(ColorSpace.getInstance(space), false, false, Transparency.OPAQUE, type);
        return new BufferedImage(model, raster, false, null);
    }
}
