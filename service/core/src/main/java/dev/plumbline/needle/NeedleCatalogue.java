// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.needle;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** The gauges with their diameters, and the needles a site has, each in the order it lists them. */
public record NeedleCatalogue(List<Gauge> gauges, List<StockNeedle> needles) {
    public NeedleCatalogue {
        gauges = List.copyOf(gauges);
        needles = List.copyOf(needles);
        Set<Integer> numbers = new HashSet<>();
        for (Gauge gauge : gauges) {
            if (!numbers.add(gauge.number())) {
                throw new IllegalArgumentException("Gauge " + gauge.number() + " is listed twice.");
            }
        }
        Set<String> ids = new HashSet<>();
        for (StockNeedle needle : needles) {
            if (!ids.add(needle.id())) {
                throw new IllegalArgumentException("Two needles are called " + needle.id() + ".");
            }
            if (!numbers.contains(needle.gauge())) {
                throw new IllegalArgumentException(
                        "Needle " + needle.id() + " has gauge " + needle.gauge() + ", which is not listed.");
            }
        }
    }

    public Optional<Gauge> gauge(int number) {
        for (Gauge gauge : gauges) {
            if (gauge.number() == number) {
                return Optional.of(gauge);
            }
        }
        return Optional.empty();
    }
}
