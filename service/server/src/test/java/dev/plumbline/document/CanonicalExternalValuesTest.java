// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;

class CanonicalExternalValuesTest {
    @Test
    void numbersAreThoseOfRfc8785AppendixB() throws Exception {
        List<String> rows;
        try (BufferedReader in = new BufferedReader(new InputStreamReader(
                Objects.requireNonNull(getClass().getResourceAsStream("/external/rfc8785-numbers.csv")),
                StandardCharsets.UTF_8))) {
            rows = in.lines().filter(line -> !line.startsWith("#")).skip(1).toList();
        }
        assertThat(rows).hasSize(24);
        for (String row : rows) {
            String[] cells = row.split(",", -1);
            double value = Double.longBitsToDouble(Long.parseUnsignedLong(cells[0], 16));
            assertThat(CanonicalNumber.text(value)).as(cells[0]).isEqualTo(cells[1]);
        }
    }
}
