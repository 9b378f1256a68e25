// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

/** Tissue between two borders. */
record Layer(Border top, Border bottom, Weave weave, double lossDbPerMm) implements Structure {
    private static final double EDGE_MM = 0.12;

    @Override
    public Box bounds() {
        return Box.between(top.highest() - EDGE_MM, bottom.lowest() + EDGE_MM);
    }

    @Override
    public void paint(Cell cell) {
        double upper = cell.layer - top.at(cell.across);
        if (upper < -EDGE_MM) {
            return;
        }
        double lower = bottom.at(cell.across) - cell.layer;
        if (lower < -EDGE_MM) {
            return;
        }
        double cover = Cell.step(upper, -EDGE_MM, EDGE_MM) * Cell.step(lower, -EDGE_MM, EDGE_MM);
        cell.cover(weave.level(cell), cover);
        cell.damp(lossDbPerMm, cover);
    }
}
