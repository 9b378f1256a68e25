// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

import java.util.Arrays;
import java.util.List;

/** Tissue sampled along the beams: rows of equal range from the face, the topmost first. */
final class Medium {
    /** Beams beyond either end of the face, so that the edge of the picture is no edge of the field. */
    static final int MARGIN = 12;

    private static final double LAYERS_FLATTEN_MM = 18;

    final Grid grid;
    final float[] echo;
    final float[] loss;
    final float[] mirror;

    /**
     * Sampling of the beams.
     *
     * @param lines beams under the face, without the margin
     * @param samples along each
     * @param stepMm distance of two samples
     */
    record Grid(Transducer transducer, int lines, int samples, double stepMm) {
        int width() {
            return lines + 2 * MARGIN;
        }

        /** Beam of a column of the grid, -1 to 1 under the face. */
        double beam(int column) {
            return 2 * (column - MARGIN + 0.5) / lines - 1;
        }

        double rangeMm(int row) {
            return (row + 0.5) * stepMm;
        }

        /** Distance of two neighbouring beams at a range. */
        double pitchMm(double rangeMm) {
            return transducer.spreadMm(rangeMm) / lines;
        }
    }

    private Medium(Grid grid) {
        this.grid = grid;
        int size = grid.width() * grid.samples();
        echo = new float[size];
        loss = new float[size];
        mirror = new float[size];
    }

    /** Paints the structures as the probe sees them after it has moved along the skin to the right. */
    static Medium of(Grid grid, List<Structure> structures, double movedMm) {
        Medium medium = new Medium(grid);
        Arrays.fill(medium.echo, (float) Decibels.SILENCE);
        Places places = new Places(grid, movedMm);
        structures.forEach(structure -> medium.paint(structure, places));
        return medium;
    }

    private void paint(Structure structure, Places places) {
        Cell cell = new Cell();
        Structure.Box box = structure.bounds();
        for (int row = places.firstRow(box); row < grid.samples() && places.reaches(row, box); row++) {
            for (int column = 0; column < grid.width(); column++) {
                if (places.moveTo(cell, column, row, box)) {
                    int i = row * grid.width() + column;
                    cell.echo = echo[i];
                    cell.loss = loss[i];
                    cell.mirror = mirror[i];
                    structure.paint(cell);
                    echo[i] = (float) cell.echo;
                    loss[i] = (float) cell.loss;
                    mirror[i] = (float) cell.mirror;
                }
            }
        }
    }

    /** Where the samples lie, without a sine for each. */
    private static final class Places {
        private final Grid grid;
        private final double[] startAcross;
        private final double[] startDepth;
        private final double[] across;
        private final double[] down;
        private final double[] followsFace;

        Places(Grid grid, double movedMm) {
            this.grid = grid;
            startAcross = new double[grid.width()];
            startDepth = new double[grid.width()];
            across = new double[grid.width()];
            down = new double[grid.width()];
            for (int column = 0; column < grid.width(); column++) {
                double lean = grid.transducer().leanOf(grid.beam(column));
                ScanPoint start = grid.transducer().place(grid.beam(column), 0);
                startAcross[column] = start.acrossMm() + movedMm;
                startDepth[column] = start.depthMm();
                across[column] = StrictMath.sin(lean);
                down[column] = StrictMath.cos(lean);
            }
            followsFace = new double[grid.samples()];
            for (int row = 0; row < grid.samples(); row++) {
                followsFace[row] = StrictMath.exp(-grid.rangeMm(row) / LAYERS_FLATTEN_MM);
            }
        }

        /** No cell of a row lies deeper than its range. */
        int firstRow(Structure.Box box) {
            return (int) Math.max(0, Math.min(grid.samples(), box.top() / grid.stepMm() - 1));
        }

        /** No cell of a row lies higher than its outermost ones. */
        boolean reaches(int row, Structure.Box box) {
            return startDepth[0] + grid.rangeMm(row) * down[0] <= box.bottom();
        }

        boolean moveTo(Cell cell, int column, int row, Structure.Box box) {
            double range = grid.rangeMm(row);
            cell.across = startAcross[column] + range * across[column];
            cell.depth = startDepth[column] + range * down[column];
            cell.layer = cell.depth + (range - cell.depth) * followsFace[row];
            return box.holds(cell);
        }
    }
}
