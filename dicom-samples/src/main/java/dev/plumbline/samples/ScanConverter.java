// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

import dev.plumbline.geometry.PointPx;

/** From levels along beams to the grey of pixels: interpolated between four samples, then compressed to 8 bits. */
final class ScanConverter {
    private final Medium.Grid grid;
    private final ImageArea area;
    private final int[] sample;
    private final float[] toRight;
    private final float[] toBelow;

    /** Works out once which samples surround each pixel of the area. */
    ScanConverter(Medium.Grid grid, ImageArea area) {
        this.grid = grid;
        this.area = area;
        int size = area.columns() * area.rows();
        sample = new int[size];
        toRight = new float[size];
        toBelow = new float[size];
        for (int row = 0; row < area.rows(); row++) {
            for (int column = 0; column < area.columns(); column++) {
                locate(row * area.columns() + column, place(column, row));
            }
        }
    }

    private ScanPoint place(int column, int row) {
        return area.toPlace(new PointPx(
                area.bounds().minColumn() + column + 0.5, area.bounds().minRow() + row + 0.5));
    }

    private void locate(int pixel, ScanPoint place) {
        double beam = grid.transducer().beam(place);
        double range = grid.transducer().rangeMm(place);
        double row = range / grid.stepMm() - 0.5;
        if (beam < -1 || beam > 1 || range < 0 || row > grid.samples() - 2) {
            sample[pixel] = -1;
            return;
        }
        double column = (beam + 1) / 2 * grid.lines() - 0.5 + Medium.MARGIN;
        int left = (int) column;
        int above = (int) Math.max(0, row);
        sample[pixel] = above * grid.width() + left;
        toRight[pixel] = (float) (column - left);
        toBelow[pixel] = (float) Math.max(0, row - above);
    }

    /** Paints the area; pixels that no beam reaches stay as they are. */
    void paint(float[] levels, Scanner.Display display, Screen screen) {
        int width = grid.width();
        float slope = (float) (255 / display.rangeDb());
        float black = (float) (display.gainDb() + display.rangeDb());
        for (int pixel = 0; pixel < sample.length; pixel++) {
            int i = sample[pixel];
            if (i >= 0) {
                float upper = levels[i] + toRight[pixel] * (levels[i + 1] - levels[i]);
                float lower = levels[i + width] + toRight[pixel] * (levels[i + width + 1] - levels[i + width]);
                float level = upper + toBelow[pixel] * (lower - upper);
                int grey = Math.max(0, Math.min(255, Math.round((level + black) * slope)));
                screen.dot(
                        area.bounds().minColumn() + pixel % area.columns(),
                        area.bounds().minRow() + pixel / area.columns(),
                        grey);
            }
        }
    }
}
