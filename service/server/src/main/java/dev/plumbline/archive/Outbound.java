// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import java.util.List;

/**
 * Where signed records go from here.
 *
 * @param destinations names of the archives that each record is queued for
 * @param queued called after a record was queued, so that nobody need look for it
 */
public record Outbound(List<String> destinations, Runnable queued) {
    /** The embedded archive is the only one. */
    public static final Outbound NOWHERE = new Outbound(List.of(), () -> {});

    public Outbound {
        destinations = List.copyOf(destinations);
    }
}
