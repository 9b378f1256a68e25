// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.PointPx;

/** The decision of a person: which path is meant. */
public sealed interface Intent {
    /** In-plane: entry this far from the probe's midpoint along the skin line, positive to the needle's side. */
    record EntryDistance(double mm) implements Intent {}

    /** In-plane: angle to the skin line under the probe, in degrees within (0, 90]. */
    record AngleToSkin(double degrees) implements Intent {}

    /** In-plane: an entry mark, snapped to the skin. */
    record EntryMark(PointPx at) implements Intent {}

    /** Out-of-plane: skin distance from puncture to the beam plane. */
    record PunctureDistance(double mm) implements Intent {}
}
