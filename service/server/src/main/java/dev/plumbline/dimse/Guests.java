// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import java.util.HashMap;
import java.util.Map;

/** Counts associations, in all and by calling AE title, against the limits. */
final class Guests {
    private final Listener.Limits limits;
    private final Map<String, Integer> byCaller = new HashMap<>();
    private int all;

    Guests(Listener.Limits limits) {
        this.limits = limits;
    }

    /** False where a limit is reached. */
    synchronized boolean enter(String caller) {
        int own = byCaller.getOrDefault(caller, 0);
        if (all >= limits.associations() || own >= limits.perPeer()) {
            return false;
        }
        byCaller.put(caller, own + 1);
        all++;
        return true;
    }

    synchronized void leave(String caller) {
        byCaller.computeIfPresent(caller, (name, count) -> count == 1 ? null : count - 1);
        all--;
    }

    synchronized int size() {
        return all;
    }
}
