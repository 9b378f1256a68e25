// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.samples;

/**
 * Injected fluid that has spread round a structure: a dark ring, thicker towards one side.
 *
 * @param inner the structure it surrounds
 * @param thicknessMm on the side it is thickest
 * @param towards where it is thickest, as a place
 */
record Fluid(NerveBundle.Oval inner, double thicknessMm, ScanPoint towards) implements Structure {
    private static final double FLUID_DB = -66;
    private static final double FLUID_LOSS = 0.15;

    @Override
    public Box bounds() {
        double reach = inner.longMm() + thicknessMm + 1;
        return Box.round(inner.center(), reach, reach);
    }

    @Override
    public void paint(Cell cell) {
        double along = inner.alongOf(cell.across, cell.depth);
        double down = inner.downOf(cell.across, cell.depth);
        double x = along / inner.longMm();
        double y = down / inner.shortMm();
        double outside = (Math.sqrt(x * x + y * y) - 1) * inner.shortMm();
        double toAlong = inner.alongOf(towards.acrossMm(), towards.depthMm());
        double toDown = inner.downOf(towards.acrossMm(), towards.depthMm());
        double facing = (along * toAlong + down * toDown)
                / Math.max(1e-9, Math.sqrt((along * along + down * down) * (toAlong * toAlong + toDown * toDown)));
        double thickness = thicknessMm * (0.55 + 0.45 * facing);
        double cover = Cell.step(outside, 0.1, 0.35) * Cell.step(thickness - outside, -0.15, 0.15);
        cell.cover(FLUID_DB, cover);
        cell.damp(FLUID_LOSS, cover);
    }
}
