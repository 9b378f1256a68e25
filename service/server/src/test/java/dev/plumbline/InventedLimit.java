// SPDX-License-Identifier: Apache-2.0
package dev.plumbline;

import dev.plumbline.agents.Basis;
import dev.plumbline.agents.Formulary;
import dev.plumbline.agents.FormularyRow;
import dev.plumbline.agents.Mass;
import dev.plumbline.agents.Route;
import dev.plumbline.agents.WeightBasis;
import dev.plumbline.config.BedsideFiles;
import dev.plumbline.record.SiteRules;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** What ships, with one limit that is invented: 100 mg of bupivacaine beside a nerve, whoever the patient is. */
public final class InventedLimit {
    private InventedLimit() {}

    /** Under a person's name. */
    public static SiteRules approved() {
        return site(new Formulary.Approval.Approved("Doe^Jo", LocalDate.parse("2026-01-01")));
    }

    public static SiteRules site(Formulary.Approval approval) {
        FormularyRow row = new FormularyRow(
                "row-1",
                new FormularyRow.Use("bupivacaine", Basis.SALT, false, Route.PERINEURAL, Optional.empty()),
                new FormularyRow.Ages(OptionalInt.empty(), OptionalInt.empty()),
                new FormularyRow.Limit(
                        Optional.empty(),
                        Optional.of(new Mass(new BigDecimal("100"))),
                        WeightBasis.ACTUAL,
                        Optional.empty(),
                        OptionalInt.empty()),
                new FormularyRow.Origin("GB", "Invented list", "1"));
        SiteRules shipped = BedsideFiles.shipped();
        return new SiteRules(
                shipped.sight(),
                shipped.checks(),
                shipped.drugs(),
                new Formulary(List.of(row), approval),
                shipped.blocks(),
                shipped.completeness(),
                shipped.marks(),
                shipped.signing());
    }
}
