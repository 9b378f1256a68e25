// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.agents;

import java.util.List;

/**
 * One solution as it is labelled.
 *
 * @param drug id in the drug list
 * @param additives such as epinephrine, at their concentration in this solution
 */
public record Agent(String drug, Basis basis, Concentration concentration, List<Additive> additives) {
    /** Id of the vasoconstrictor in the drug list. */
    public static final String EPINEPHRINE = "epinephrine";

    public Agent {
        additives = List.copyOf(additives);
    }

    /** A second drug in the same solution. */
    public record Additive(String drug, Basis basis, Concentration concentration) {}

    public boolean hasEpinephrine() {
        return additives.stream().anyMatch(additive -> additive.drug().equals(EPINEPHRINE));
    }
}
