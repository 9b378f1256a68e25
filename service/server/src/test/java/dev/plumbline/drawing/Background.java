// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.util.Random;

/** Pictures to draw over: plain, or speckle of one mean brightness that is the same every time. */
final class Background {
    private Background() {}

    /** One grey everywhere. */
    static BufferedImage plain(int columns, int rows) {
        BufferedImage image = new BufferedImage(columns, rows, BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = image.createGraphics();
        graphics.setColor(Color.DARK_GRAY);
        graphics.fillRect(0, 0, columns, rows);
        graphics.dispose();
        return image;
    }

    /** Rayleigh-distributed grey levels around a mean, as unprocessed speckle has. */
    static BufferedImage speckle(int columns, int rows, double mean) {
        Random random = new Random(20_261_125);
        BufferedImage image = new BufferedImage(columns, rows, BufferedImage.TYPE_INT_RGB);
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < columns; column++) {
                double rayleigh = Math.sqrt(-2 * Math.log(1 - random.nextDouble())) / 1.2533;
                int grey = (int) Math.min(255, mean * rayleigh);
                image.setRGB(column, row, grey << 16 | grey << 8 | grey);
            }
        }
        return image;
    }
}
