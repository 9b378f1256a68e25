// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

/** What fixes a path, and is exact because it is a decision and not a measurement. */
public sealed interface Decision {
    /** The entry, in millimetres along the skin line from the probe frame's origin. */
    record Entry(double alongMm) implements Decision {}

    /** The angle to the skin line under the probe, in radians within (0, pi/2]. */
    record Angle(double radians) implements Decision {}
}
