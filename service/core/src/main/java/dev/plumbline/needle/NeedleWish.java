// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.needle;

import java.util.List;
import java.util.Optional;

/**
 * What is asked of a needle, the first of each list preferred.
 *
 * @param tipTypes the tips that are taken; empty: any, in the catalogue's order
 * @param gauges the gauges that are taken; empty: any, in the catalogue's order
 * @param echogenic empty: both
 */
public record NeedleWish(List<TipType> tipTypes, List<Integer> gauges, Optional<Boolean> echogenic) {
    public static final NeedleWish ANY = new NeedleWish(List.of(), List.of(), Optional.empty());

    public NeedleWish {
        tipTypes = List.copyOf(tipTypes);
        gauges = List.copyOf(gauges);
    }

    boolean takes(StockNeedle needle) {
        return (tipTypes.isEmpty() || tipTypes.contains(needle.tipType()))
                && (gauges.isEmpty() || gauges.contains(needle.gauge()))
                && echogenic.map(wanted -> wanted == needle.echogenic()).orElse(true);
    }
}
