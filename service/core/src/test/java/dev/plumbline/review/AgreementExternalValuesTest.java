// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.aggregator.ArgumentsAccessor;
import org.junit.jupiter.params.provider.CsvFileSource;

/** The published worked examples of agreement. */
class AgreementExternalValuesTest {
    private static final double FOUR = 5e-5;
    private static final double THREE = 5e-4;

    private static RatingTable pefr(int first, int second) throws IOException {
        return RatingTable.of(ExternalTable.numbers("bland_altman_pefr_1986.csv").stream()
                .map(row -> List.of(row.get(first), row.get(second)))
                .toList());
    }

    @Test
    void limitsOfAgreementOfThePeakFlowMeters() throws IOException {
        RatingTable firstReadings = pefr(0, 2);
        assertThat(firstReadings.subjects()).isEqualTo(17);
        BlandAltman two = BlandAltman.of(firstReadings, 2, 0.95);
        assertThat(two.bias()).isCloseTo(-2.1176, within(FOUR));
        assertThat(two.sd()).isCloseTo(38.7651, within(FOUR));
        assertThat(two.lowerLimit()).isCloseTo(-79.648, within(THREE));
        assertThat(two.upperLimit()).isCloseTo(75.413, within(THREE));
        BlandAltman normal = BlandAltman.of(firstReadings, BlandAltman.NORMAL_95, 0.95);
        assertThat(normal.lowerLimit()).isCloseTo(-78.097, within(THREE));
        assertThat(normal.upperLimit()).isCloseTo(73.862, within(THREE));
    }

    @Test
    void intervalsOfTheLimits() throws IOException {
        BlandAltman two = BlandAltman.of(pefr(0, 2), 2, 0.95);
        assertThat(two.biasInterval().low()).isCloseTo(-22.049, within(THREE));
        assertThat(two.biasInterval().high()).isCloseTo(17.814, within(THREE));
        assertThat(two.lowerInterval().low()).isCloseTo(-114.17, within(0.005));
        assertThat(two.lowerInterval().high()).isCloseTo(-45.13, within(0.005));
        assertThat(two.upperInterval().low()).isCloseTo(40.89, within(0.005));
        assertThat(two.upperInterval().high()).isCloseTo(109.93, within(0.005));
    }

    /** -2.1, 38.8, -79.7, 75.5: from memory; the paper rounds first, hence 0.1. */
    @Test
    void agreesWithThePapersPrintedLimitsToTheirRounding() throws IOException {
        BlandAltman two = BlandAltman.of(pefr(0, 2), 2, 0.95);
        assertThat(two.bias()).isCloseTo(-2.1, within(0.1));
        assertThat(two.sd()).isCloseTo(38.8, within(0.1));
        assertThat(two.lowerLimit()).isCloseTo(-79.7, within(0.1));
        assertThat(two.upperLimit()).isCloseTo(75.5, within(0.1));
    }

    @Test
    void technicalErrorOfDuplicates() throws IOException {
        TechnicalError wright = TechnicalError.of(pefr(0, 1));
        TechnicalError mini = TechnicalError.of(pefr(2, 3));
        assertThat(wright.value()).isCloseTo(15.30667, within(5e-6));
        assertThat(mini.value()).isCloseTo(19.91083, within(5e-6));
        assertThat(wright.repeatability()).isCloseTo(42.428, within(THREE));
        assertThat(mini.repeatability()).isCloseTo(55.190, within(THREE));
    }

    @Test
    void meanSquaresOfShroutAndFleiss() throws IOException {
        MeanSquares squares = MeanSquares.of(RatingTable.of(ExternalTable.numbers("shrout_fleiss_1979.csv")));
        assertThat(squares.between()).isCloseTo(11.241667, within(5e-7));
        assertThat(squares.within()).isCloseTo(6.263889, within(5e-7));
        assertThat(squares.observers()).isCloseTo(32.486111, within(5e-7));
        assertThat(squares.residual()).isCloseTo(1.019444, within(5e-7));
    }

    @ParameterizedTest
    @CsvFileSource(resources = "/external/shrout_fleiss_1979_results.csv", useHeadersInDisplayName = true)
    void sixFormsOfShroutAndFleiss(ArgumentsAccessor row) throws IOException {
        RatingTable table = RatingTable.of(ExternalTable.numbers("shrout_fleiss_1979.csv"));
        IntraclassCorrelation.Form form = Arrays.stream(IntraclassCorrelation.Form.values())
                .filter(f -> f.word().equals(row.getString(0)))
                .findFirst()
                .orElseThrow();
        IntraclassCorrelation found = IntraclassCorrelation.of(table, form, 0.95);
        assertThat(found.value().orElseThrow()).isCloseTo(row.getDouble(1), within(0.005));
        assertThat(found.value().orElseThrow()).isCloseTo(row.getDouble(2), within(5e-7));
        ConfidenceInterval interval = found.interval().orElseThrow();
        assertThat(interval.low()).isCloseTo(row.getDouble(3), within(0.0005));
        assertThat(interval.high()).isCloseTo(row.getDouble(4), within(0.005));
    }

    @Test
    void readsAllSixForms() throws IOException {
        assertThat(ExternalTable.rows("shrout_fleiss_1979_results.csv")).hasSize(6);
        assertThat(IntraclassCorrelation.Form.values()).hasSize(6);
    }
}
