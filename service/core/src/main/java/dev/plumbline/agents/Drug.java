// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.agents;

import dev.plumbline.geometry.Foundation;
import java.math.BigDecimal;
import java.util.Optional;

/**
 * A drug of the list.
 *
 * @param localAnaesthetic counts in the dose budget
 * @param usual concentrations it comes in; outside them the entry is questioned, never refused
 */
public record Drug(String id, boolean localAnaesthetic, Optional<Usual> usual) {
    /** Usual range of concentrations in mg/mL. */
    public record Usual(BigDecimal lowMgPerMl, BigDecimal highMgPerMl, Foundation foundation) {
        public Usual {
            if (lowMgPerMl.signum() <= 0 || lowMgPerMl.compareTo(highMgPerMl) > 0) {
                throw new IllegalArgumentException("A usual range runs from low to high.");
            }
        }

        private boolean holds(BigDecimal mgPerMl) {
            return lowMgPerMl.compareTo(mgPerMl) <= 0 && mgPerMl.compareTo(highMgPerMl) <= 0;
        }
    }

    /** What is odd about a concentration. */
    public enum Doubt {
        /** Ten times as much would be usual: the number may be per cent. */
        MAY_BE_PERCENT("mayBePercent"),
        /** A tenth would be usual: the number may be mg/mL entered as per cent. */
        MAY_BE_MG_PER_ML("mayBeMgPerMl"),
        UNUSUAL("unusualConcentration");

        private final String word;

        Doubt(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    /** A question about a concentration; empty where it is usual or nothing is known. */
    public Optional<Doubt> doubt(Concentration concentration) {
        BigDecimal mgPerMl = concentration.mgPerMl();
        if (usual.isEmpty() || usual.get().holds(mgPerMl)) {
            return Optional.empty();
        }
        if (usual.get().holds(mgPerMl.movePointRight(1))) {
            return Optional.of(Doubt.MAY_BE_PERCENT);
        }
        return Optional.of(usual.get().holds(mgPerMl.movePointLeft(1)) ? Doubt.MAY_BE_MG_PER_ML : Doubt.UNUSUAL);
    }
}
