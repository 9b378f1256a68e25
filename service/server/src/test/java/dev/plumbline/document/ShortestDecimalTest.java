// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.io.schubfach.DoubleToDecimal;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Judge: the writer of Jackson, an implementation of the same paper by other hands. */
class ShortestDecimalTest {
    private static final int EACH = 100_000;

    private final ShortestDecimal shortest = new ShortestDecimal();

    @Test
    void writesWhatJacksonWrites() {
        Random random = new Random(20261128);
        int taken = 0;
        for (int i = 0; i < EACH; i++) {
            taken += agrees(Math.exp(24 * random.nextDouble() - 6)); // all sizes
            taken += agrees(-100 * random.nextDouble());
            taken += agrees(Math.round(1e6 * random.nextDouble()) / 1000.0); // few digits
            taken += agrees(random.nextInt(10_000_000)); // whole
            taken += agrees(random.nextInt(1 << 20) / 4096.0); // few bits
            taken += agrees(Math.nextUp(random.nextInt(1000) / 16.0)); // many nines and noughts
        }
        assertThat(taken).isBetween(5 * EACH, 6 * EACH - 1);
    }

    @Test
    void leavesOtherNumbersToTheCaller() {
        for (double value : new double[] {
            0, -0.0, 1, 0.25, 1e7, 1e-3, Double.NaN, Double.POSITIVE_INFINITY, Double.MIN_VALUE, Double.MAX_VALUE
        }) {
            assertThat(shortest.takes(value)).as("%s", value).isFalse();
        }
    }

    @Test
    void endsOfTheRange() {
        for (double end : new double[] {0x1p-7, 0.01, 0.1, 1, 10, 99, 100, 999, 1000, 1e5, 1e6, 8388608, 1e7}) {
            for (double value : List.of(Math.nextDown(end), end, Math.nextUp(end), -Math.nextDown(end))) {
                agrees(value);
            }
        }
    }

    @Test
    void theGeneratorWritesAllNumbersAsJackson() throws IOException {
        List<String> expected = new ArrayList<>();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (JsonGenerator json = AnswerJson.generator(out)) {
            json.writeStartArray();
            for (double value : new double[] {0, -0.0, 1, -33.436723348547616, 0.0033, 1.2e-9, 4e7, 29}) {
                json.writeNumber(value);
                expected.add(DoubleToDecimal.toString(value));
            }
            json.writeEndArray();
        }
        assertThat(out.toString(StandardCharsets.UTF_8)).isEqualTo("[" + String.join(",", expected) + "]");
    }

    /** 1 where the number is taken, 0 where it is left to the caller. */
    private int agrees(double value) {
        if (!shortest.takes(value)) {
            return 0;
        }
        String text = new String(shortest.text(), shortest.start(), shortest.length());
        assertThat(text).isEqualTo(DoubleToDecimal.toString(value));
        return 1;
    }
}
