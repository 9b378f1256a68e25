// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.config;

import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.procedure.SightDetail;
import dev.plumbline.record.Companions;
import dev.plumbline.record.SiteRules;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * How the service runs at a site.
 *
 * @param host to listen at; anything but loopback must be asked for with {@code insecure}, as there is no access control
 * @param port 0 for any free one
 * @param dataFolder holds everything that is kept; a usual place where absent
 * @param institution printed in records
 * @param country of the records' language, ISO 3166-1 alpha-2
 * @param site what the site has set for the bedside
 * @param needles file of the needles that are chosen from; the shipped list where absent
 * @param transducers file of the transducers that are chosen from; the shipped list where absent
 * @param companions made beside every report
 * @param intake how much it lets in
 * @param network whom it speaks with by DICOM
 */
public record ServiceConfig(
        String host,
        int port,
        Optional<Path> dataFolder,
        String institution,
        String country,
        SiteRules site,
        Optional<Path> needles,
        Optional<Path> transducers,
        Companions companions,
        IntakeLimits intake,
        Network network) {
    private static final String SCHEMA = "plumbline-service/1";
    private static final List<String> LOOPBACK = List.of("127.0.0.1", "localhost", "::1");
    private static final int LAST_PORT = 65_535;

    /** Fields of the file beside {@code schema}. */
    static final String[] FIELDS = {
        "host",
        "port",
        "dataFolder",
        "institution",
        "country",
        "needles",
        "transducers",
        "insecure",
        "site",
        "completeness",
        "record",
        "companions",
        "intake",
        "dicom",
        "peers"
    };

    /** What holds where no file says otherwise; design choices. */
    public static final ServiceConfig USUAL = new ServiceConfig(
            "127.0.0.1",
            8642,
            Optional.empty(),
            "",
            "GB",
            BedsideFiles.shipped(),
            Optional.empty(),
            Optional.empty(),
            Companions.ALL,
            IntakeLimits.NONE,
            Network.NONE);

    /**
     * Reads a configuration file.
     *
     * @throws Refusal with the field and the remedy
     */
    public static ServiceConfig read(Path path) {
        try (InputStream in = Files.newInputStream(path)) {
            return read(in, path.toAbsolutePath());
        } catch (FileSystemException e) {
            throw new Refusal(
                    new Problem.NotHeld("", "The file " + path + " cannot be read.", "Name a file that is there."));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static ServiceConfig read(InputStream in, Path path) {
        SiteObject file = SiteFile.read(in, SCHEMA, FIELDS);
        return new ServiceConfig(
                host(file),
                port(file),
                path(file, "dataFolder", path),
                file.optionalText("institution").orElse(USUAL.institution),
                country(file),
                BedsideFiles.read(file.optionalObject("site", BedsideFiles.FIELDS), path, signing(file)),
                path(file, "needles", path),
                path(file, "transducers", path),
                companions(file),
                IntakeLimits.read(file.optionalObject("intake", IntakeLimits.FIELDS)),
                new NetworkFile(file, path).read());
    }

    /** Everything that holds, defaults included; no secret is in it. */
    public ObjectNode effective() {
        return EffectiveConfig.of(this);
    }

    private static SiteRules.Signing signing(SiteObject file) {
        Optional<SightDetail> detail = file.optionalObject("record", "sightDetail")
                .flatMap(record -> record.optionalWord("sightDetail", SightDetail.values(), SightDetail::word));
        return new SiteRules.Signing(
                file.optionalWord("completeness", Completeness.values(), Completeness::word)
                        .filter(Completeness.REQUIRED::equals)
                        .isPresent(),
                detail.orElse(BedsideFiles.USUAL_SIGNING.sightDetail()));
    }

    private static Companions companions(SiteObject file) {
        return file.optionalObject("companions", "presentationStates", "pdf", "keyObjects")
                .map(made -> new Companions(
                        made.optionalFlag("presentationStates").orElse(true),
                        made.optionalFlag("pdf").orElse(true),
                        made.optionalFlag("keyObjects").orElse(true)))
                .orElse(USUAL.companions);
    }

    /** Of which records the items required to sign are required. */
    private enum Completeness {
        /** Of every record. */
        REQUIRED("required"),
        /** Of those whose log, checks or agents were kept here. */
        WHEN_KEPT("whenKept");

        private final String word;

        Completeness(String word) {
            this.word = word;
        }

        private String word() {
            return word;
        }
    }

    private static String host(SiteObject file) {
        String host = file.optionalText("host").orElse(USUAL.host);
        if (!LOOPBACK.contains(host) && !file.optionalFlag("insecure").orElse(false)) {
            throw new Refusal(new Problem.InvalidValue(
                    file.at("host"),
                    "The service has no access control, and this address can be reached from other machines.",
                    "Listen at 127.0.0.1, or spell out \"insecure\": true if the network around it is guarded."));
        }
        return host;
    }

    private static int port(SiteObject file) {
        int port = file.optionalWhole("port").orElse(USUAL.port);
        if (port < 0 || port > LAST_PORT) {
            throw new Refusal(new Problem.InvalidValue(
                    file.at("port"), "There is no such port.", "Give 0 to " + LAST_PORT + "; 0 takes any free one."));
        }
        return port;
    }

    private static Optional<Path> path(SiteObject file, String field, Path config) {
        try {
            return file.optionalText(field).map(config::resolveSibling);
        } catch (InvalidPathException e) {
            throw new Refusal(new Problem.InvalidValue(
                    file.at(field), "This is no path.", "Give a path, relative to this file or whole."));
        }
    }

    private static String country(SiteObject file) {
        String country = file.optionalText("country").orElse(USUAL.country);
        if (!country.matches("[A-Z]{2}")) {
            throw new Refusal(new Problem.InvalidValue(
                    file.at("country"), "This is no country code.", "Give two capital letters of ISO 3166-1."));
        }
        return country;
    }
}
