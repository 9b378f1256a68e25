// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

/** A number without a unit. */
public record Ratio(double value) {
    public Ratio {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("A ratio is finite.");
        }
    }
}
