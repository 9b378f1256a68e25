// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import java.net.InetAddress;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Who may call us, and from where; nobody else is answered.
 *
 * @param ranges by calling AE title
 */
public record Callers(Map<String, List<AddressRange>> ranges) {
    public Callers {
        ranges = Map.copyOf(ranges);
    }

    boolean mayCall(String aeTitle, InetAddress from) {
        return ranges.getOrDefault(aeTitle, List.of()).stream().anyMatch(range -> range.holds(from));
    }

    public Set<String> aeTitles() {
        return ranges.keySet();
    }
}
