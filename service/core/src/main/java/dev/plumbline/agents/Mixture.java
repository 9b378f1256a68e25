// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.agents;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Solutions in one syringe: each dilutes the others, the masses stay.
 *
 * <p>Source: elementary; volumes are taken to add up.
 *
 * @param volume of everything together, above 0
 * @param contents what is in it, in the order it was put in; the same drug of the same basis once
 */
public record Mixture(Volume volume, List<Content> contents) {
    public Mixture {
        contents = List.copyOf(contents);
    }

    /** A volume of one solution. */
    public record Portion(Agent agent, Volume volume) {}

    /** One drug in the mixture. */
    public record Content(String drug, Basis basis, Mass mass, Concentration concentration) {}

    private record Substance(String drug, Basis basis) {}

    /** Puts portions together; at least one has a volume. */
    public static Mixture of(List<Portion> portions) {
        Volume total = portions.stream().map(Portion::volume).reduce(Volume.NONE, Volume::plus);
        if (total.ml().signum() == 0) {
            throw Amounts.refused("A mixture of nothing has no concentration.", "Give the volume of each part.");
        }
        Map<Substance, Mass> masses = new LinkedHashMap<>();
        for (Portion portion : portions) {
            Agent agent = portion.agent();
            if (portion.volume().ml().signum() > 0) {
                masses.merge(
                        new Substance(agent.drug(), agent.basis()),
                        Mass.in(portion.volume(), agent.concentration()),
                        Mass::plus);
                for (Agent.Additive additive : agent.additives()) {
                    masses.merge(
                            new Substance(additive.drug(), additive.basis()),
                            Mass.in(portion.volume(), additive.concentration()),
                            Mass::plus);
                }
            }
        }
        List<Content> contents = new ArrayList<>();
        masses.forEach((substance, mass) -> contents.add(new Content(
                substance.drug(),
                substance.basis(),
                mass,
                new Concentration(mass.mg().divide(total.ml(), Amounts.DIVISION)))));
        return new Mixture(total, contents);
    }

    public Optional<Content> content(String drug) {
        return contents.stream().filter(c -> c.drug().equals(drug)).findFirst();
    }

    /**
     * The mass of a drug in a part of the mixture. The mass of the whole is multiplied before it is divided, so that a
     * concentration that does not end in decimals loses nothing.
     */
    public Mass massIn(Content content, Volume part) {
        if (part.compareTo(volume) > 0) {
            throw Amounts.refused(
                    "There are " + Amounts.plain(volume.ml()) + " mL in this syringe, not " + Amounts.plain(part.ml())
                            + ".",
                    "Give a volume up to that.");
        }
        return new Mass(content.mass().mg().multiply(part.ml()).divide(volume.ml(), Amounts.DIVISION));
    }
}
