// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.config;

import dev.plumbline.problem.Refusal;
import dev.plumbline.procedure.Completeness;
import java.io.InputStream;

/** What a record should hold, {@code completeness.json}; schema {@code docs/site/completeness.schema.json}. */
public final class CompletenessFile {
    static final String NAME = "completeness.json";

    private CompletenessFile() {}

    /**
     * Reads the list.
     *
     * @throws Refusal when the file is none, or requires more than may be required
     */
    public static Completeness read(InputStream in) {
        SiteObject root = SiteFile.read(in, "plumbline-completeness/1", Foundations.FIELD, "items");
        Foundations foundations = new Foundations(root);
        return root.valid(() -> new Completeness(
                root.objects("items", "id", "text", "requiredToSign", "agreement", "foundation").stream()
                        .map(fields -> new Completeness.Item(
                                fields.text("id"),
                                fields.text("text"),
                                fields.flag("requiredToSign"),
                                fields.word("agreement", Completeness.Agreement.values(), Completeness.Agreement::word),
                                foundations.of(fields)))
                        .toList()));
    }

    /** The list that ships. */
    public static Completeness shipped() {
        return SiteFile.shipped(NAME, CompletenessFile::read);
    }
}
