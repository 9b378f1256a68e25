// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.config;

import dev.plumbline.document.StrictJson;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.Function;

/** A JSON file of a site, or the one that ships in its place. */
final class SiteFile {
    private SiteFile() {}

    /** The root of a file of the wanted kind; it may hold {@code schema}, {@code about} and the named fields. */
    static SiteObject read(InputStream in, String schema, String... fields) {
        String[] known = new String[fields.length + 2];
        known[0] = "schema";
        known[1] = "about";
        System.arraycopy(fields, 0, known, 2, fields.length);
        SiteObject root = SiteObject.of(StrictJson.read(in), "", known);
        if (!root.text("schema").equals(schema)) {
            throw new Refusal(new Problem.UnreadableDocument(
                    "/schema",
                    "The schema is " + root.text("schema") + ", and this version reads " + schema + " here.",
                    "Put a file of the schema " + schema + " in this place."));
        }
        return root;
    }

    /**
     * Reads a file of a site.
     *
     * @throws Refusal with the file in its words, as there may be several of them
     */
    static <T> T read(Path path, Function<InputStream, T> reading) {
        try (InputStream in = Files.newInputStream(path)) {
            return reading.apply(in);
        } catch (Refusal refusal) {
            Problem problem = refusal.problem();
            throw new Refusal(new Problem.UnreadableDocument(
                    problem.pointer(), "In the file " + path + ": " + problem.detail(), problem.remedy()));
        } catch (FileSystemException e) {
            throw new Refusal(
                    new Problem.NotHeld("", "The file " + path + " cannot be read.", "Name a file that is there."));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The file that ships. */
    static InputStream shipped(String name) {
        InputStream in = SiteFile.class.getResourceAsStream(name);
        if (in == null) {
            throw new IllegalStateException(name + " is missing from the build.");
        }
        return in;
    }

    /** Reads the shipped file of a name and closes it. */
    static <T> T shipped(String name, Function<InputStream, T> reading) {
        try (InputStream in = shipped(name)) {
            return reading.apply(in);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
