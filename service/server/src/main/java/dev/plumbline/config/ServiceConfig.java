// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.config;

import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
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
 * @param network whom it speaks with by DICOM
 */
public record ServiceConfig(
        String host, int port, Optional<Path> dataFolder, String institution, String country, Network network) {
    private static final String SCHEMA = "plumbline-service/1";
    private static final List<String> LOOPBACK = List.of("127.0.0.1", "localhost", "::1");
    private static final int LAST_PORT = 65_535;

    /** What holds where no file says otherwise; design choices. */
    public static final ServiceConfig USUAL = new ServiceConfig("127.0.0.1", 8642, Optional.empty(), "", "GB", Network.NONE);

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
        SiteObject file = SiteFile.read(in, SCHEMA, "host", "port", "dataFolder", "institution", "country", "insecure", "dicom", "peers");
        return new ServiceConfig(
                host(file),
                port(file),
                file.optionalText("dataFolder").map(folder -> folder(file, path, folder)),
                file.optionalText("institution").orElse(USUAL.institution),
                country(file),
                new NetworkFile(file, path).read());
    }

    /** Everything that holds, defaults included; no secret is in it. */
    public ObjectNode effective() {
        return EffectiveConfig.of(this);
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

    private static Path folder(SiteObject file, Path path, String folder) {
        try {
            return path.resolveSibling(folder);
        } catch (InvalidPathException e) {
            throw new Refusal(new Problem.InvalidValue(
                    file.at("dataFolder"), "This is no path.", "Give a folder, relative to this file or whole."));
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
