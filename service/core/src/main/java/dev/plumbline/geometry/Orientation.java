// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

/**
 * How the probe frame lies on the display.
 *
 * @param needleSide the side of the displayed image that u points to
 * @param inverted shown probe-down: into the tissue is up
 */
public record Orientation(Side needleSide, boolean inverted) {
    public Orientation otherSide() {
        return new Orientation(needleSide == Side.RIGHT ? Side.LEFT : Side.RIGHT, inverted);
    }
}
