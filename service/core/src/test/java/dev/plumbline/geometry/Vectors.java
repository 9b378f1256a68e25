// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.assertj.core.api.Assertions;

/** Published vectors in test resources: comment lines, a header line, then rows. */
public final class Vectors {
    private Vectors() {}

    /** The rows under {@code external/}; their number is part of the check. */
    public static List<String[]> rows(String file, int expected) {
        try (InputStream in = Vectors.class.getResourceAsStream("/external/" + file)) {
            Assertions.assertThat(in).as(file).isNotNull();
            List<String[]> rows = new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.startsWith("#") && !line.isBlank())
                    .skip(1)
                    .map(line -> line.split(",", -1))
                    .toList();
            Assertions.assertThat(rows).as(file).hasSize(expected);
            return rows;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public static double[] column(List<String[]> rows, int index) {
        return rows.stream().mapToDouble(row -> Double.parseDouble(row[index])).toArray();
    }
}
