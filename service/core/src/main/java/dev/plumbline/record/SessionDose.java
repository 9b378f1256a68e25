// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.record;

import dev.plumbline.agents.Basis;
import dev.plumbline.agents.Dose;
import dev.plumbline.agents.DoseBudget;
import dev.plumbline.agents.DoseShares;
import dev.plumbline.agents.Formulary;
import dev.plumbline.agents.FormularyRow;
import dev.plumbline.agents.Mass;
import dev.plumbline.agents.Route;
import dev.plumbline.agents.Stage;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * What all cases of a session had given when a revision was made, beside the limits that the site had approved then. Frozen
 * with the revision: later entries, and other limits, change nothing in it.
 *
 * @param totals mass of each drug and basis over the session, in the order given
 * @param parts every dose beside its limit
 * @param sumPercent of all shares; empty where a dose has none
 * @param cautions stand under every share
 */
public record SessionDose(
        List<Amount> totals, List<Part> parts, Optional<BigDecimal> sumPercent, List<String> cautions) {
    /** Stands where the other cases of a session are not at hand. */
    public static final String THIS_CASE_ALONE = "Of this case alone: the other cases of its session were not at hand.";

    /** Digits of a share. Source: as shown in answers; design choice. */
    private static final MathContext SIX_DIGITS = new MathContext(6, RoundingMode.HALF_EVEN);

    private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);

    public SessionDose {
        totals = List.copyOf(totals);
        parts = List.copyOf(parts);
        cautions = List.copyOf(cautions);
    }

    /** A mass of a drug in milligrams, on its basis. */
    public record Amount(String drug, Basis basis, BigDecimal mg) {}

    /** A dose with what it is judged by. */
    public record Part(Amount dose, boolean vasoconstrictor, Route route, Judged judged) {}

    /** A share of a limit, or why there is none. */
    public sealed interface Judged {
        /**
         * A share in percent of a limit in milligrams.
         *
         * @param approvedBy the person of the site who stands for the limit
         */
        record Share(BigDecimal percent, BigDecimal limitMg, String source, String edition, String approvedBy)
                implements Judged {}

        record None(DoseShares.Why why) implements Judged {}
    }

    /**
     * As the cases stand.
     *
     * @param cases of the session, at least one
     * @param time of the revision
     * @return empty where nothing was given
     */
    public static Optional<SessionDose> of(List<CaseDocument> cases, SiteRules site, OffsetDateTime time) {
        Sitting sitting = Sitting.of("", cases, site.drugs());
        DoseBudget budget = sitting.session().budget(Stage.GIVEN, time);
        if (budget.doses().isEmpty()) {
            return Optional.empty();
        }
        DoseShares shares = budget.shares(site.formulary(), sitting.patient(), time);
        List<Amount> totals = new ArrayList<>();
        budget.totals().forEach((key, mass) -> totals.add(amount(key, mass)));
        return Optional.of(new SessionDose(
                totals,
                shares.parts().stream()
                        .map(part -> part(part, site.formulary()))
                        .toList(),
                shares.total().map(SessionDose::percent),
                shares.cautions()));
    }

    /** The same with a further caution. */
    public SessionDose with(String caution) {
        List<String> more = new ArrayList<>(cautions);
        more.add(caution);
        return new SessionDose(totals, parts, sumPercent, more);
    }

    private static Amount amount(String drugAndBasis, Mass mass) {
        int cut = drugAndBasis.lastIndexOf('/');
        String basis = drugAndBasis.substring(cut + 1);
        return new Amount(
                drugAndBasis.substring(0, cut),
                Arrays.stream(Basis.values())
                        .filter(each -> each.word().equals(basis))
                        .findFirst()
                        .orElseThrow(),
                plain(mass.mg()));
    }

    private static Part part(DoseShares.Part part, Formulary formulary) {
        Dose dose = part.dose();
        return new Part(
                new Amount(dose.drug(), dose.basis(), plain(dose.mass().mg())),
                dose.vasoconstrictor(),
                dose.route(),
                judged(part.verdict(), formulary));
    }

    private static Judged judged(DoseShares.Verdict verdict, Formulary formulary) {
        if (verdict instanceof DoseShares.Verdict.Share share
                && formulary.approval() instanceof Formulary.Approval.Approved approved) {
            FormularyRow.Origin origin = share.row().origin();
            return new Judged.Share(
                    percent(share.share()),
                    plain(share.limit().mg()),
                    origin.source(),
                    origin.edition(),
                    approved.by());
        }
        return new Judged.None(
                verdict instanceof DoseShares.Verdict.None none ? none.why() : DoseShares.Why.NOT_APPROVED);
    }

    private static BigDecimal percent(BigDecimal share) {
        return plain(share.multiply(HUNDRED).round(SIX_DIGITS));
    }

    /** Without idle zeros, so that what is kept and read again is equal. */
    private static BigDecimal plain(BigDecimal value) {
        BigDecimal stripped = value.stripTrailingZeros();
        return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
    }
}
