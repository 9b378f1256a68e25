// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import java.util.Optional;

/**
 * One of several marks of the same point; pixels as in {@link PointPx}.
 *
 * @param by who set it; repeats without a name are those of one person
 */
public record Repeat(double column, double row, Optional<String> by) {
    /** Where it was set. */
    public PointPx at() {
        return new PointPx(column, row);
    }
}
