// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

/** A signed length in millimetres. */
public record Length(double mm) {
    public Length {
        if (!Double.isFinite(mm)) {
            throw new IllegalArgumentException("A length is finite.");
        }
    }
}
