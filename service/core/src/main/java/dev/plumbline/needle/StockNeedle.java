// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.needle;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * A needle of the catalogue: a kind of needle, never a product.
 *
 * @param id names it within the catalogue
 * @param lengthMm of the shaft from hub to tip
 * @param echogenic made to reflect sound, as its maker says
 */
public record StockNeedle(String id, TipType tipType, double lengthMm, int gauge, boolean echogenic) {
    public StockNeedle {
        if (!(lengthMm > 0) || Double.isInfinite(lengthMm)) {
            throw new IllegalArgumentException("A needle has a positive length.");
        }
    }

    /** As it is stated in a case. */
    public Needle asStated() {
        return new Needle(OptionalInt.of(gauge), OptionalDouble.of(lengthMm), Optional.of(echogenic));
    }
}
