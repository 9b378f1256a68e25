// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.needle;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;

/**
 * Nominal tubing of one gauge, in millimetres; sources and their tags stand in {@code gauges.csv} beside this class.
 *
 * @param outerMinMm ISO 9626 limit, from memory
 * @param outerMaxMm ISO 9626 limit, from memory
 * @param innerMinMm ISO 9626 minimum of a regular wall, from memory
 * @param nominalOuterMm Stubs
 * @param nominalInnerMm Stubs
 */
public record Gauge(
        int gauge,
        double outerMinMm,
        double outerMaxMm,
        double innerMinMm,
        double nominalOuterMm,
        double nominalInnerMm) {
    private static final List<Gauge> SHIPPED = read();

    /** Thickest first. */
    public static List<Gauge> shipped() {
        return SHIPPED;
    }

    /** Empty for a gauge the table does not have. */
    public static Optional<Gauge> of(int gauge) {
        return SHIPPED.stream().filter(row -> row.gauge == gauge).findFirst();
    }

    private static List<Gauge> read() {
        try (InputStream table = Gauge.class.getResourceAsStream("gauges.csv")) {
            if (table == null) {
                throw new IllegalStateException("The table of gauges is not on the class path.");
            }
            return new String(table.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.startsWith("#"))
                    .skip(1)
                    .map(line -> row(line.split(",", -1)))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Gauge row(String[] cells) {
        return new Gauge(
                Integer.parseInt(cells[0]),
                Double.parseDouble(cells[2]),
                Double.parseDouble(cells[3]),
                Double.parseDouble(cells[4]),
                Double.parseDouble(cells[7]),
                Double.parseDouble(cells[8]));
    }
}
