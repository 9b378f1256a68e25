// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.agents;

import java.math.BigDecimal;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Each dose as a share of the limit that the site has approved for it, and their sum; a share of 1 is the whole limit.
 *
 * <p>Several drugs, and a drug with and without vasoconstrictor, add as fractions. Source: additive model, common practice,
 * no source: a warning, not a permission. Where a dose has no limit the sum is not the whole story and there is none.
 *
 * @param parts every dose that counts now, in the order given
 * @param total of all parts; empty where one has no share
 * @param otherDosesUnknown nobody asked for other local anaesthetic of the day
 */
public record DoseShares(List<Part> parts, Optional<BigDecimal> total, boolean otherDosesUnknown) {
    /** Stands under every share. */
    public static final String CAUTION = "A share below 100 % is not a safe dose.";

    /** Stands beside every share where nobody asked. */
    public static final String OTHER_UNKNOWN = "Other doses unknown.";

    public DoseShares {
        parts = List.copyOf(parts);
    }

    /** A dose beside its limit. */
    public record Part(Dose dose, Verdict verdict) {}

    /** A share, or why there is none. */
    public sealed interface Verdict {
        /** The share of a limit and the row it comes from. */
        record Share(BigDecimal share, Mass limit, FormularyRow row) implements Verdict {}

        record None(Why why) implements Verdict {}
    }

    /** Why there is no verdict. */
    public enum Why {
        NOT_APPROVED("formularyNotApproved", "nobody of the site has approved limits"),
        NO_ROW("noMatchingRow", "the approved limits have no row for this dose"),
        /** Two rows fit; which one counts is for the site to say. */
        SEVERAL_ROWS("severalMatchingRows", "more than one row of the approved limits fits this dose"),
        WEIGHT_MISSING("weightMissing", "the limit needs a weight that was not stated");

        private final String word;
        private final String text;

        Why(String word, String text) {
            this.word = word;
            this.text = text;
        }

        /** For people. */
        public String text() {
            return text;
        }

        public String word() {
            return word;
        }
    }

    /** What doses are judged beside. */
    record Beside(Formulary formulary, Patient patient, OffsetDateTime now) {}

    static DoseShares of(DoseBudget budget, Beside beside) {
        List<Part> parts = new ArrayList<>();
        for (Dose dose : budget.doses()) {
            Verdict verdict = verdict(dose, beside);
            if (counts(dose, verdict, beside.now())) {
                parts.add(new Part(dose, verdict));
            }
        }
        return new DoseShares(parts, total(parts), budget.otherDoses() == OtherDoses.NOT_ASKED);
    }

    private static Verdict verdict(Dose dose, Beside beside) {
        if (!beside.formulary().inForce()) {
            return new Verdict.None(Why.NOT_APPROVED);
        }
        List<FormularyRow> rows = beside.formulary().rowsFor(dose, beside.patient());
        if (rows.size() != 1) {
            return new Verdict.None(rows.isEmpty() ? Why.NO_ROW : Why.SEVERAL_ROWS);
        }
        FormularyRow row = rows.get(0);
        return row.limit()
                .of(beside.patient())
                .<Verdict>map(
                        limit -> new Verdict.Share(dose.mass().mg().divide(limit.mg(), Amounts.DIVISION), limit, row))
                .orElse(new Verdict.None(Why.WEIGHT_MISSING));
    }

    /** Outside the window of its own limit a dose no longer counts. */
    private static boolean counts(Dose dose, Verdict verdict, OffsetDateTime now) {
        if (verdict instanceof Verdict.Share share
                && share.row().limit().windowHours().isPresent()) {
            return dose.at()
                    .plusHours(share.row().limit().windowHours().getAsInt())
                    .isAfter(now);
        }
        return true;
    }

    private static Optional<BigDecimal> total(List<Part> parts) {
        BigDecimal sum = BigDecimal.ZERO;
        for (Part part : parts) {
            if (part.verdict() instanceof Verdict.Share share) {
                sum = sum.add(share.share());
            } else {
                return Optional.empty();
            }
        }
        return parts.isEmpty() ? Optional.empty() : Optional.of(sum);
    }

    /** The parts that have a share together exceed the whole; known even where other parts have none. */
    public boolean exceeds() {
        return parts.stream()
                        .map(Part::verdict)
                        .filter(Verdict.Share.class::isInstance)
                        .map(verdict -> ((Verdict.Share) verdict).share())
                        .reduce(BigDecimal.ZERO, BigDecimal::add)
                        .compareTo(BigDecimal.ONE)
                > 0;
    }

    /** Whether a reminder fires: at what is planned or drawn up, while there is time; going on then needs a reason. */
    public boolean reminds(Stage stage) {
        return stage.reminds() && exceeds();
    }

    /** What stands under the shares, always. */
    public List<String> cautions() {
        return otherDosesUnknown ? List.of(CAUTION, OTHER_UNKNOWN) : List.of(CAUTION);
    }
}
