// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

/** How the skin runs beyond the probe's footprint, on the side the needle comes from. */
public sealed interface SkinBeyondProbe {
    /** On along the line under the probe; the default, and an assumption that answers name. */
    record Flat() implements SkinBeyondProbe {}

    /** Round limb: {@code w(u) = r - sqrt(r^2 - u^2)}. */
    record Round(double radiusMm) implements SkinBeyondProbe {}

    /** Straight from the probe's edge down to {@code dropMm} below the line at {@code atMm} from the midpoint. */
    record Drop(double dropMm, double atMm) implements SkinBeyondProbe {}
}
