// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.config;

import dev.plumbline.agents.Basis;
import dev.plumbline.agents.Formulary;
import dev.plumbline.agents.FormularyRow;
import dev.plumbline.agents.Mass;
import dev.plumbline.agents.Route;
import dev.plumbline.agents.WeightBasis;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.io.InputStream;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * The limits of a site, {@code formulary.json}; schema {@code docs/site/formulary.schema.json}. What ships is an example that
 * is switched off.
 */
public final class FormularyFile {
    static final String EXAMPLE = "formulary-example.json";

    private static final String[] ROW = {
        "id",
        "drug",
        "basis",
        "vasoconstrictor",
        "route",
        "technique",
        "ageFromYears",
        "ageToYears",
        "mgPerKg",
        "absoluteMg",
        "weightBasis",
        "capKg",
        "windowHours",
        "country",
        "source",
        "edition"
    };

    /** A limit is for what a label says, never for what nobody read. */
    private static final Basis[] LABELLED = {Basis.SALT, Basis.BASE};

    private static final Route[] KNOWN_ROUTES = {Route.PERINEURAL, Route.FASCIAL_PLANE, Route.INFILTRATION};

    private FormularyFile() {}

    /**
     * Reads a formulary. One without an approval, or marked as an example, is read and gives no verdict.
     *
     * @throws Refusal when the file is none, or is approved by nobody in particular
     */
    public static Formulary read(InputStream in) {
        SiteObject root = SiteFile.read(in, "plumbline-formulary/1", "example", "approval", "rows");
        return root.valid(() -> new Formulary(
                root.objects("rows", ROW).stream().map(FormularyFile::row).toList(), approval(root)));
    }

    /** The example that ships; switched off. */
    public static Formulary example() {
        return SiteFile.shipped(EXAMPLE, FormularyFile::read);
    }

    private static Formulary.Approval approval(SiteObject root) {
        Optional<SiteObject> approval = root.optionalObject("approval", "by", "on");
        if (root.optionalFlag("example").orElse(false)) {
            if (approval.isPresent()) {
                throw new Refusal(new Problem.ContradictoryFields(
                        "/approval", "An example cannot be approved.", "Remove /example, or the approval."));
            }
            return new Formulary.Approval.Missing("the file is an example");
        }
        return approval.<Formulary.Approval>map(
                        fields -> fields.valid(() -> new Formulary.Approval.Approved(fields.text("by"), day(fields))))
                .orElse(new Formulary.Approval.Missing("nobody has approved the file"));
    }

    private static LocalDate day(SiteObject fields) {
        try {
            return LocalDate.parse(fields.text("on"));
        } catch (DateTimeParseException e) {
            throw new IllegalArgumentException("The day of the approval is not a date such as 2026-01-05.", e);
        }
    }

    private static FormularyRow row(SiteObject fields) {
        return fields.valid(() -> new FormularyRow(
                fields.text("id"),
                new FormularyRow.Use(
                        fields.text("drug"),
                        fields.word("basis", LABELLED, Basis::word),
                        fields.flag("vasoconstrictor"),
                        fields.word("route", KNOWN_ROUTES, Route::word),
                        fields.optionalText("technique")),
                new FormularyRow.Ages(whole(fields, "ageFromYears"), whole(fields, "ageToYears")),
                limit(fields),
                new FormularyRow.Origin(fields.text("country"), fields.text("source"), fields.text("edition"))));
    }

    private static FormularyRow.Limit limit(SiteObject fields) {
        Optional<BigDecimal> absolute = fields.optionalDecimal("absoluteMg");
        return new FormularyRow.Limit(
                fields.optionalDecimal("mgPerKg"),
                absolute.map(Mass::new),
                fields.optionalWord("weightBasis", WeightBasis.values(), WeightBasis::word)
                        .orElse(WeightBasis.ACTUAL),
                fields.optionalDecimal("capKg"),
                whole(fields, "windowHours"));
    }

    private static OptionalInt whole(SiteObject fields, String name) {
        return fields.optionalWhole(name).map(OptionalInt::of).orElse(OptionalInt.empty());
    }
}
