// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

/**
 * How many millimetres one pixel spans. The two axes may differ; convert each before any angle.
 *
 * @param mmPerColumn horizontal extent of a pixel, positive and finite
 * @param mmPerRow vertical extent of a pixel, positive and finite
 */
public record PixelSize(double mmPerColumn, double mmPerRow) {
    public PixelSize {
        if (!(mmPerColumn > 0) || !(mmPerRow > 0) || Double.isInfinite(mmPerColumn) || Double.isInfinite(mmPerRow)) {
            throw new IllegalArgumentException("A pixel size is positive and finite on both axes.");
        }
    }
}
