// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.review;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;

/** A table of plain numbers from {@code external/}: comment lines, one header line, rows. */
final class ExternalTable {
    private ExternalTable() {}

    static List<String> rows(String file) throws IOException {
        try (InputStream in = Objects.requireNonNull(ExternalTable.class.getResourceAsStream("/external/" + file));
                BufferedReader lines = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
            return lines.lines().filter(line -> !line.startsWith("#")).skip(1).toList();
        }
    }

    static List<List<Double>> numbers(String file) throws IOException {
        return rows(file).stream()
                .map(row ->
                        Arrays.stream(row.split(",", -1)).map(Double::valueOf).toList())
                .toList();
    }
}
