// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.config;

import dev.plumbline.agents.Drug;
import dev.plumbline.agents.DrugList;
import dev.plumbline.problem.Refusal;
import java.io.InputStream;

/** The drugs that can be entered, {@code drugs.json}; schema {@code docs/site/drugs.schema.json}. */
public final class DrugFile {
    static final String NAME = "drugs.json";

    private DrugFile() {}

    /**
     * Reads a list.
     *
     * @throws Refusal when the file is none, pointing at the field
     */
    public static DrugList read(InputStream in) {
        SiteObject root = SiteFile.read(in, "plumbline-drugs/1", Foundations.FIELD, "drugs");
        Foundations foundations = new Foundations(root);
        return root.valid(() -> new DrugList(root.objects("drugs", "id", "localAnaesthetic", "usual").stream()
                .map(fields -> drug(fields, foundations))
                .toList()));
    }

    /** The list that ships. */
    public static DrugList shipped() {
        return SiteFile.shipped(NAME, DrugFile::read);
    }

    private static Drug drug(SiteObject fields, Foundations foundations) {
        return new Drug(
                fields.text("id"),
                fields.flag("localAnaesthetic"),
                fields.optionalObject("usual", "lowMgPerMl", "highMgPerMl", "foundation")
                        .map(usual -> usual.valid(() -> new Drug.Usual(
                                usual.decimal("lowMgPerMl"), usual.decimal("highMgPerMl"), foundations.of(usual)))));
    }
}
