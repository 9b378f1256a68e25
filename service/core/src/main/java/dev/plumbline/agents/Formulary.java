// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.agents;

import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * The limits of a site. They count only when a person of the site has approved them; without that, and for everything they do
 * not list, there is no verdict.
 */
public record Formulary(List<FormularyRow> rows, Approval approval) {
    public static final Formulary NONE = new Formulary(List.of(), new Approval.Missing("the site has no formulary"));

    public Formulary {
        rows = List.copyOf(rows);
        Set<String> ids = new HashSet<>();
        for (FormularyRow row : rows) {
            if (!ids.add(row.id())) {
                throw new IllegalArgumentException("Two rows are called " + row.id() + ".");
            }
        }
    }

    /** Whether a person stands for the limits. */
    public sealed interface Approval {
        /** Approved by a named person on a day. */
        record Approved(String by, LocalDate on) implements Approval {
            private static final Set<String> NOBODY =
                    Set.of("sample", "example", "test", "nobody", "none", "tbd", "todo", "n/a", "unknown");

            public Approved {
                if (by.isBlank() || NOBODY.contains(by.strip().toLowerCase(Locale.ROOT))) {
                    throw new IllegalArgumentException("A formulary is approved by a person with a name.");
                }
            }
        }

        /** Not approved; in words why. The rows can be read and give no verdict. */
        record Missing(String why) implements Approval {}
    }

    public boolean inForce() {
        return approval instanceof Approval.Approved;
    }

    /** The rows in force that are a limit for this dose in this patient; none when nothing is approved. */
    List<FormularyRow> rowsFor(Dose dose, Patient patient) {
        return inForce()
                ? rows.stream()
                        .filter(row -> row.use().fits(dose) && row.ages().hold(patient.ageYears()))
                        .toList()
                : List.of();
    }

    /** Why nothing is in force; empty when something is. */
    public Optional<String> whyNotInForce() {
        return approval instanceof Approval.Missing missing ? Optional.of(missing.why()) : Optional.empty();
    }
}
