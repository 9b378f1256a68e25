// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.needle;

import dev.plumbline.geometry.Foundation;
import java.util.Optional;

/**
 * A gauge and the diameters that go by its name, in millimetres. A gauge fixes the outer diameter only (ISO 7864:2016,
 * 3.1); the bore depends on the wall, so a device's own label goes before this table.
 *
 * @param number legacy size designation; the larger, the thinner
 * @param nominal the customary pair of diameters
 * @param limits the standard's limits, where they are listed
 */
public record Gauge(int number, Diameters nominal, Optional<Limits> limits) {
    public Gauge {
        if (number < 1) {
            throw new IllegalArgumentException("A gauge is a positive number.");
        }
    }

    /** Outer and inner diameter. */
    public record Diameters(double outerMm, double innerMm, Foundation foundation) {
        public Diameters {
            if (!(0 < innerMm && innerMm < outerMm) || Double.isInfinite(outerMm)) {
                throw new IllegalArgumentException("The bore is narrower than the needle.");
            }
        }
    }

    /** Limits of the outer diameter and the least bore of a regular wall. */
    public record Limits(double outerLeastMm, double outerMostMm, double innerLeastMm, Foundation foundation) {
        public Limits {
            if (!(0 < innerLeastMm && innerLeastMm < outerLeastMm && outerLeastMm <= outerMostMm)
                    || Double.isInfinite(outerMostMm)) {
                throw new IllegalArgumentException("Limits of a gauge run from bore to outer diameter.");
            }
        }
    }
}
