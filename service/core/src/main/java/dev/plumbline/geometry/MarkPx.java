// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import org.apache.commons.math3.RealFieldElement;

/** A mark in pixels (see {@link PointPx}) whose two coordinates are inputs of their own. */
public record MarkPx<T extends RealFieldElement<T>>(T column, T row) {
    static <T extends RealFieldElement<T>> MarkPx<T> of(PointPx point, double standardUncertainty, Inputs<T> inputs) {
        return new MarkPx<>(
                inputs.uncertain(point.column(), standardUncertainty),
                inputs.uncertain(point.row(), standardUncertainty));
    }
}
