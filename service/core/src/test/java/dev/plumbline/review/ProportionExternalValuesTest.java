// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.aggregator.ArgumentsAccessor;
import org.junit.jupiter.params.provider.CsvFileSource;

/** Newcombe's proportions, none and all included. */
class ProportionExternalValuesTest {
    @ParameterizedTest
    @CsvFileSource(resources = "/external/newcombe_1998.csv", useHeadersInDisplayName = true)
    void agreesWithNewcombe(ArgumentsAccessor row) {
        Proportion proportion = new Proportion(row.getInteger(0), row.getInteger(1));
        double tolerance = row.getDouble(6);
        ConfidenceInterval wilson = proportion.wilson(0.95);
        ConfidenceInterval exact = proportion.clopperPearson(0.95);
        assertThat(wilson.low()).isCloseTo(row.getDouble(2), within(tolerance));
        assertThat(wilson.high()).isCloseTo(row.getDouble(3), within(tolerance));
        assertThat(exact.low()).isCloseTo(row.getDouble(4), within(tolerance));
        assertThat(exact.high()).isCloseTo(row.getDouble(5), within(tolerance));
    }

    @Test
    void readsAllSixRowsOfTheFile() throws Exception {
        assertThat(ExternalTable.rows("newcombe_1998.csv")).hasSize(6);
    }

    /** SciPy documentation, binomtest(7, 50).proportion_ci(), twelve digits. */
    @Test
    void exactIntervalAgreesWithSciPyToTwelveDigits() {
        ConfidenceInterval exact = new Proportion(7, 50).clopperPearson(0.95);
        assertThat(exact.low()).isCloseTo(0.058191700340, within(1e-11));
        assertThat(exact.high()).isCloseTo(0.267396002497, within(1e-11));
    }
}
