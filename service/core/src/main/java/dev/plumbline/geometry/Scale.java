// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import org.apache.commons.math3.RealFieldElement;

/** Millimetres per pixel of one frame, each axis with the scale error it shares with all frames of its equipment. */
public record Scale<T extends RealFieldElement<T>>(T mmPerColumn, T mmPerRow) {
    /** On the display's axes, millimetres from the image's top-left corner. */
    public PointMm<T> onDisplay(MarkPx<T> mark) {
        return new PointMm<>(mark.column().multiply(mmPerColumn), mark.row().multiply(mmPerRow));
    }

    /** In pixels, at the nominal values. */
    public PointPx toPixel(PointMm<T> display) {
        return new PointPx(
                display.x().getReal() / mmPerColumn.getReal(), display.y().getReal() / mmPerRow.getReal());
    }
}
