// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.geometry.Region;
import java.awt.image.BufferedImage;
import java.awt.image.Raster;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;

/**
 * The part of a region where echoes are shown: the largest connected patch of cells in which enough pixels are not black.
 * Captions, rulers and other furniture beside it are left out because they do not touch it.
 *
 * <p><b>Source:</b> design choice; the thresholds were set by looking at frames.
 */
final class InsonatedArea {
    /** Nothing in a row or column. */
    static final int NONE = -1;

    private static final int CELL = 4;
    private static final int BLACK = 10;
    private static final double LIT_SHARE = 0.15;

    private final Region bounds;
    private final int columns;
    private final int rows;
    private final boolean[] lit;
    private final int[] patch;

    private InsonatedArea(BufferedImage image, Region bounds) {
        this.bounds = bounds;
        this.columns = bounds.maxColumn() - bounds.minColumn() + 1;
        this.rows = bounds.maxRow() - bounds.minRow() + 1;
        this.lit = lit(image);
        this.patch = largestPatch();
    }

    static InsonatedArea of(BufferedImage image, Region bounds) {
        Region inside = new Region(
                bounds.index(),
                bounds.minColumn(),
                bounds.minRow(),
                Math.min(bounds.maxColumn(), image.getWidth() - 1),
                Math.min(bounds.maxRow(), image.getHeight() - 1));
        return new InsonatedArea(image, inside);
    }

    Region bounds() {
        return bounds;
    }

    private boolean[] lit(BufferedImage image) {
        Raster raster = image.getRaster();
        boolean[] bright = new boolean[columns * rows];
        for (int band = 0; band < raster.getNumBands(); band++) {
            int[] samples = raster.getSamples(bounds.minColumn(), bounds.minRow(), columns, rows, band, (int[]) null);
            for (int i = 0; i < samples.length; i++) {
                bright[i] |= samples[i] > BLACK;
            }
        }
        return bright;
    }

    private int cellColumns() {
        return (columns + CELL - 1) / CELL;
    }

    private int cellRows() {
        return (rows + CELL - 1) / CELL;
    }

    private boolean[] fullCells() {
        int[] counts = new int[cellColumns() * cellRows()];
        for (int i = 0; i < lit.length; i++) {
            if (lit[i]) {
                counts[cell(i % columns, i / columns)]++;
            }
        }
        boolean[] full = new boolean[counts.length];
        for (int cell = 0; cell < counts.length; cell++) {
            full[cell] = counts[cell] >= LIT_SHARE * CELL * CELL;
        }
        return full;
    }

    private int cell(int column, int row) {
        return row / CELL * cellColumns() + column / CELL;
    }

    /** Marks the cells of the largest patch with 1. */
    private int[] largestPatch() {
        boolean[] full = fullCells();
        int[] label = new int[full.length];
        int next = 0;
        int largest = 0;
        int most = 0;
        for (int cell = 0; cell < full.length; cell++) {
            if (full[cell] && label[cell] == 0) {
                int size = flood(full, label, cell, ++next);
                if (size > most) {
                    most = size;
                    largest = next;
                }
            }
        }
        int winner = largest;
        return Arrays.stream(label).map(l -> l != 0 && l == winner ? 1 : 0).toArray();
    }

    private int flood(boolean[] full, int[] label, int from, int number) {
        Deque<Integer> open = new ArrayDeque<>();
        open.push(from);
        label[from] = number;
        int size = 0;
        while (!open.isEmpty()) {
            int cell = open.pop();
            size++;
            int column = cell % cellColumns();
            for (int neighbour : new int[] {cell - cellColumns(), cell + cellColumns(), cell - 1, cell + 1}) {
                boolean beside = Math.abs(neighbour % cellColumns() - column) <= 1;
                if (neighbour >= 0 && neighbour < full.length && beside && full[neighbour] && label[neighbour] == 0) {
                    label[neighbour] = number;
                    open.push(neighbour);
                }
            }
        }
        return size;
    }

    private boolean holds(int column, int row) {
        return lit[row * columns + column] && patch[cell(column, row)] == 1;
    }

    /** Share of the region's cells that the patch covers. */
    double share() {
        return Arrays.stream(patch).sum() / (double) patch.length;
    }

    /** Leftmost lit column of each row of the region, counted in the frame; {@link #NONE} where a row has none. */
    int[] left() {
        return extents(rows, columns, false, false);
    }

    /** Rightmost lit column of each row. */
    int[] right() {
        return extents(rows, columns, true, false);
    }

    /** Topmost lit row of each column of the region. */
    int[] top() {
        return extents(columns, rows, false, true);
    }

    private int[] extents(int lines, int length, boolean fromEnd, boolean vertical) {
        int[] extents = new int[lines];
        for (int line = 0; line < lines; line++) {
            extents[line] = NONE;
            for (int step = 0; step < length && extents[line] == NONE; step++) {
                int at = fromEnd ? length - 1 - step : step;
                if (vertical ? holds(line, at) : holds(at, line)) {
                    extents[line] = at + (vertical ? bounds.minRow() : bounds.minColumn());
                }
            }
        }
        return extents;
    }
}
