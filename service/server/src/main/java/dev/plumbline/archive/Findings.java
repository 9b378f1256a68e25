// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import java.util.List;

/**
 * What a look at a data folder found.
 *
 * @param damages held objects whose files cannot be used
 * @param unindexed object files that no row speaks of
 */
public record Findings(List<Damage> damages, int unindexed) {
    /** Nothing. */
    public static final Findings NONE = new Findings(List.of(), 0);

    public Findings {
        damages = List.copyOf(damages);
    }
}
