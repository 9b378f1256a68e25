// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.agents;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** The drugs that can be entered. */
public record DrugList(List<Drug> drugs) {
    public DrugList {
        drugs = List.copyOf(drugs);
        Set<String> ids = new HashSet<>();
        for (Drug drug : drugs) {
            if (!ids.add(drug.id())) {
                throw new IllegalArgumentException("Two drugs are called " + drug.id() + ".");
            }
        }
    }

    /**
     * A drug by its id.
     *
     * @throws Refusal {@link Problem.InvalidValue} for a drug that is not listed
     */
    public Drug drug(String id) {
        return drugs.stream()
                .filter(drug -> drug.id().equals(id))
                .findFirst()
                .orElseThrow(() -> Amounts.refused(
                        "This drug is not in the site's list.",
                        "Give one of "
                                + String.join(", ", drugs.stream().map(Drug::id).toList())
                                + ", or add it to the list."));
    }
}
