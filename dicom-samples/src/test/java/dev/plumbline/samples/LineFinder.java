// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

import dev.plumbline.geometry.PointPx;

/** Finds the brightest straight ridge of a picture without being told where it is: every line between two borders is tried. */
final class LineFinder {
    private static final int FLANK = 7;

    private final SampleFrame frame;
    private final ImageArea area;

    /** Row of the ridge at two columns. */
    record Ridge(PointPx shallow, PointPx deep) {
        double rowAt(double column) {
            double share = (column - deep.column()) / (shallow.column() - deep.column());
            return deep.row() + share * (shallow.row() - deep.row());
        }
    }

    LineFinder(SampleFrame frame, ImageArea area) {
        this.frame = frame;
        this.area = area;
    }

    /** Between two columns, the right one shallower by 15 to 60 degrees. */
    Ridge between(int leftColumn, int rightColumn) {
        double best = -1;
        Ridge found = new Ridge(new PointPx(0, 0), new PointPx(0, 0));
        int width = rightColumn - leftColumn;
        for (double deep = area.bounds().minRow() + 60; deep < area.bounds().maxRow() - 10; deep += 0.5) {
            for (double rise = 0.27 * width; rise < 1.73 * width; rise += 0.5) {
                double shallow = deep - rise;
                if (shallow > area.bounds().minRow() + 20) {
                    Ridge tried = new Ridge(new PointPx(rightColumn, shallow), new PointPx(leftColumn, deep));
                    double contrast = contrast(tried);
                    if (contrast > best) {
                        best = contrast;
                        found = tried;
                    }
                }
            }
        }
        return found;
    }

    private double contrast(Ridge ridge) {
        double sum = 0;
        int count = 0;
        for (double column = ridge.deep.column() + 0.5; column < ridge.shallow.column(); column += 3) {
            double row = ridge.rowAt(column);
            sum += 2 * level(column, row) - level(column, row - FLANK) - level(column, row + FLANK);
            count++;
        }
        return sum / count;
    }

    /** Interpolated between the centres of two pixels of a column. */
    private double level(double column, double row) {
        int above = (int) Math.floor(row - 0.5);
        double share = row - 0.5 - above;
        int c = (int) column;
        return (1 - share) * frame.level(c, above) + share * frame.level(c, above + 1);
    }
}
