// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.config;

import dev.plumbline.problem.Refusal;
import dev.plumbline.procedure.SetUpChecks;
import java.io.InputStream;
import java.time.Duration;

/** The set-up checks of a site, {@code set-up-checks.json}; schema {@code docs/site/set-up-checks.schema.json}. */
public final class CheckFile {
    static final String NAME = "set-up-checks.json";

    private CheckFile() {}

    /**
     * Reads the checks.
     *
     * @throws Refusal when the file is none, pointing at the field
     */
    public static SetUpChecks read(InputStream in) {
        SiteObject root = SiteFile.read(in, "plumbline-checks/1", "stopMomentMinutes", "checks");
        return root.valid(() -> new SetUpChecks(
                root.objects("checks", "id", "code", "text").stream()
                        .map(fields -> new SetUpChecks.Check(
                                fields.text("id"), fields.optionalText("code"), fields.text("text")))
                        .toList(),
                Duration.ofMinutes(root.whole("stopMomentMinutes"))));
    }

    /** The checks that ship. */
    public static SetUpChecks shipped() {
        return SiteFile.shipped(NAME, CheckFile::read);
    }
}
