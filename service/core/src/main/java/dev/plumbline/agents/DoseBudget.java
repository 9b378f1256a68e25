// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.agents;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.math.BigDecimal;
import java.time.OffsetDateTime;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Everything of one session that counts: all linked cases, infiltration, hydrolocation with local anaesthetic, and other
 * local anaesthetic of the day.
 */
public record DoseBudget(List<Dose> doses, OtherDoses otherDoses) {
    /**
     * Checks that the answer about other doses and the doses agree.
     *
     * @throws Refusal {@link Problem.ContradictoryFields} when other doses are listed that nobody asked for, or the reverse
     */
    public DoseBudget {
        doses = List.copyOf(doses);
        boolean listed = doses.stream().anyMatch(dose -> dose.purpose() == Dose.Purpose.OTHER_TODAY);
        if (listed != (otherDoses == OtherDoses.ASKED_GIVEN)) {
            throw new Refusal(new Problem.ContradictoryFields(
                    "/otherDoses",
                    "The answer about other doses and the doses listed contradict each other.",
                    "List what was given, or answer askedNone."));
        }
    }

    /** Total mass of each drug and basis, in the order given; never one for two bases. */
    public Map<String, Mass> totals() {
        Map<String, Mass> totals = new LinkedHashMap<>();
        for (Dose dose : doses) {
            totals.merge(dose.drug() + "/" + dose.basis().word(), dose.mass(), Mass::plus);
        }
        return totals;
    }

    /**
     * Milligrams of one drug per kilogram of actual weight.
     *
     * @throws Refusal {@link Problem.MissingField} when no weight was entered
     */
    public BigDecimal mgPerKg(String drug, Basis basis, Patient patient) {
        Weight weight = patient.weight()
                .orElseThrow(() -> new Refusal(
                        new Problem.MissingField("/weight", "Give the weight in kilograms and where it comes from.")));
        return doses.stream()
                .filter(dose -> dose.drug().equals(drug) && dose.basis() == basis)
                .map(Dose::mass)
                .reduce(Mass.NONE, Mass::plus)
                .mgPerKg(weight.kg());
    }

    /** The share of the site's limits at a moment. */
    public DoseShares shares(Formulary formulary, Patient patient, OffsetDateTime now) {
        return DoseShares.of(this, new DoseShares.Beside(formulary, patient, now));
    }
}
