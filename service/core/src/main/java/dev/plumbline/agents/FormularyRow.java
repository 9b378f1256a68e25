// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.agents;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * One limit as a site lists it, for exactly what it says and nothing else.
 *
 * @param id names the row
 * @param use what it is a limit for
 * @param ages for whom
 * @param limit how much
 * @param origin where it comes from
 */
public record FormularyRow(String id, Use use, Ages ages, Limit limit, Origin origin) {
    /**
     * What a limit is for.
     *
     * @param vasoconstrictor whether the solution holds one
     * @param technique empty: any
     */
    public record Use(String drug, Basis basis, boolean vasoconstrictor, Route route, Optional<String> technique) {
        boolean fits(Dose dose) {
            return drug.equals(dose.drug())
                    && basis == dose.basis()
                    && vasoconstrictor == dose.vasoconstrictor()
                    && route == dose.route()
                    && (technique.isEmpty() || technique.equals(dose.technique()));
        }
    }

    /** Completed years, both ends included; open where absent. A row with a band never fits an unknown age. */
    public record Ages(OptionalInt from, OptionalInt to) {
        public Ages {
            if (from.isPresent() && to.isPresent() && from.getAsInt() > to.getAsInt()) {
                throw new IllegalArgumentException("An age band runs upwards.");
            }
        }

        boolean hold(OptionalInt age) {
            if (age.isEmpty()) {
                return from.isEmpty() && to.isEmpty();
            }
            return age.getAsInt() >= from.orElse(age.getAsInt()) && age.getAsInt() <= to.orElse(age.getAsInt());
        }
    }

    /**
     * How much; where both are given the smaller counts.
     *
     * @param capKg of the weight, for {@link WeightBasis#CAPPED}
     * @param windowHours doses older than this do not count; all of the session where absent
     */
    public record Limit(
            Optional<BigDecimal> mgPerKg,
            Optional<Mass> absolute,
            WeightBasis weightBasis,
            Optional<BigDecimal> capKg,
            OptionalInt windowHours) {
        public Limit {
            if (mgPerKg.isEmpty() && absolute.isEmpty()) {
                throw new IllegalArgumentException("A limit has mg/kg, an absolute mass, or both.");
            }
            boolean noneIsZero = mgPerKg.filter(x -> x.signum() <= 0).isEmpty()
                    && absolute.filter(x -> x.mg().signum() <= 0).isEmpty()
                    && capKg.filter(x -> x.signum() <= 0).isEmpty()
                    && windowHours.orElse(1) >= 1;
            if (!noneIsZero) {
                throw new IllegalArgumentException("A limit is above 0.");
            }
            if (weightBasis == WeightBasis.CAPPED && capKg.isEmpty()) {
                throw new IllegalArgumentException("A capped weight needs its cap.");
            }
        }

        /** The mass allowed for a patient; empty where it needs a weight that was not entered. */
        public Optional<Mass> of(Patient patient) {
            if (mgPerKg.isEmpty()) {
                return absolute;
            }
            return weightBasis.of(patient, capKg).map(kg -> {
                Mass byWeight = new Mass(mgPerKg.get().multiply(kg));
                return absolute.filter(most -> most.compareTo(byWeight) < 0).orElse(byWeight);
            });
        }
    }

    /** Where a limit comes from. */
    public record Origin(String country, String source, String edition) {
        public Origin {
            if (country.isBlank() || source.isBlank() || edition.isBlank()) {
                throw new IllegalArgumentException("A limit names its country, source and edition.");
            }
        }
    }
}
