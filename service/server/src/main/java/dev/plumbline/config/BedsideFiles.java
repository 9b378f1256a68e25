// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.config;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.procedure.SightDetail;
import dev.plumbline.record.SiteRules;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Function;

/** The files of a site for the bedside: each the site's own where the configuration names one, else the one that ships. */
public final class BedsideFiles {
    /** Fields of {@code site} in the service's configuration. */
    static final String[] FIELDS = {
        "sightLadder", "setUpChecks", "drugs", "formulary", "blocks", "completeness", "markRules"
    };

    /** What holds where no configuration says otherwise; design choice. */
    static final SiteRules.Signing USUAL_SIGNING = new SiteRules.Signing(false, SightDetail.SUMMARY);

    private final Optional<SiteObject> site;
    private final Path config;

    private BedsideFiles(Optional<SiteObject> site, Path config) {
        this.site = site;
        this.config = config;
    }

    /** Everything as it ships; the formulary is an example and switched off. */
    public static SiteRules shipped() {
        return read(Optional.empty(), Path.of(""), USUAL_SIGNING);
    }

    /**
     * Reads the files that a configuration names.
     *
     * @throws Refusal that names the field of the configuration, and the place in the file
     */
    static SiteRules read(Optional<SiteObject> site, Path config, SiteRules.Signing signing) {
        BedsideFiles files = new BedsideFiles(site, config);
        return new SiteRules(
                files.file("sightLadder", SightFile.NAME, SightFile::read),
                files.file("setUpChecks", CheckFile.NAME, CheckFile::read),
                files.file("drugs", DrugFile.NAME, DrugFile::read),
                files.file("formulary", FormularyFile.EXAMPLE, FormularyFile::read),
                files.file("blocks", BlockFile.NAME, BlockFile::read),
                files.file("completeness", CompletenessFile.NAME, CompletenessFile::read),
                files.file("markRules", MarkRuleFile.NAME, MarkRuleFile::read),
                signing);
    }

    private <T> T file(String field, String shipped, Function<InputStream, T> reading) {
        Optional<String> own = site.flatMap(fields -> fields.optionalText(field));
        return own.isEmpty() ? SiteFile.shipped(shipped, reading) : own(field, own.get(), reading);
    }

    private <T> T own(String field, String name, Function<InputStream, T> reading) {
        String at = site.orElseThrow().at(field);
        try (InputStream in = Files.newInputStream(config.resolveSibling(name))) {
            return reading.apply(in);
        } catch (Refusal refusal) {
            Problem problem = refusal.problem();
            throw new Refusal(new Problem.InvalidValue(
                    at,
                    "The file " + name + " is refused"
                            + (problem.pointer().isEmpty() ? ": " : " at " + problem.pointer() + ": ")
                            + problem.detail(),
                    problem.remedy()));
        } catch (FileSystemException | InvalidPathException e) {
            throw new Refusal(new Problem.NotHeld(
                    at, "The file " + name + " cannot be read.", "Name a file, relative to this one or whole."));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
