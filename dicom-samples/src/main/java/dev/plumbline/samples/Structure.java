// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

/** Something in the body that the beam meets. Structures are painted one over the other in the order of their list. */
interface Structure {
    /** Outside it the structure changes nothing. */
    Box bounds();

    /** Changes the tissue at one place, inside the bounds. */
    void paint(Cell cell);

    /** A rectangle in the image plane, millimetres; of a layer, its depths below the skin. */
    record Box(double left, double right, double top, double bottom) {
        static final Box EVERYWHERE = new Box(-1e6, 1e6, -1e6, 1e6);

        static Box between(double top, double bottom) {
            return new Box(-1e6, 1e6, top, bottom);
        }

        static Box round(ScanPoint center, double across, double down) {
            return new Box(
                    center.acrossMm() - across,
                    center.acrossMm() + across,
                    center.depthMm() - down,
                    center.depthMm() + down);
        }

        /** Whether a cell may lie inside; a layer follows the skin, so its depth is never less than the cell's. */
        boolean holds(Cell cell) {
            return left <= cell.across && cell.across <= right && top <= cell.layer && cell.depth <= bottom;
        }
    }
}
