// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;

class AgreementPropertyTest {
    @Provide
    Arbitrary<List<List<Double>>> pairs() {
        return rows(2);
    }

    @Provide
    Arbitrary<List<List<Double>>> threes() {
        return rows(3);
    }

    private static Arbitrary<List<List<Double>>> rows(int observers) {
        return Arbitraries.doubles()
                .between(-90, 90)
                .ofScale(2)
                .list()
                .ofSize(observers)
                .list()
                .ofMinSize(2)
                .ofMaxSize(20);
    }

    @Property(tries = 200)
    void swappingTheObserversTurnsTheLimitsRound(@ForAll("pairs") List<List<Double>> pairs) {
        BlandAltman one = BlandAltman.of(RatingTable.of(pairs), 1.96, 0.95);
        BlandAltman other = BlandAltman.of(
                RatingTable.of(pairs.stream()
                        .map(row -> List.of(row.get(1), row.get(0)))
                        .toList()),
                1.96,
                0.95);
        assertThat(one.lowerLimit()).isCloseTo(-other.upperLimit(), within(1e-9));
        assertThat(one.sd()).isCloseTo(other.sd(), within(1e-9));
    }

    @Property(tries = 200)
    void aConstantDifferenceMovesTheBiasAndNothingElse(
            @ForAll("pairs") List<List<Double>> pairs, @ForAll @DoubleRange(min = -50, max = 50) double shift) {
        BlandAltman before = BlandAltman.of(RatingTable.of(pairs), 1.96, 0.95);
        List<List<Double>> shifted = pairs.stream()
                .map(row -> List.of(row.get(0) + shift, row.get(1)))
                .toList();
        BlandAltman after = BlandAltman.of(RatingTable.of(shifted), 1.96, 0.95);
        assertThat(after.bias()).isCloseTo(before.bias() + shift, within(1e-9));
        assertThat(after.sd()).isCloseTo(before.sd(), within(1e-9));
        assertThat(after.upperLimit()).isCloseTo(before.upperLimit() + shift, within(1e-9));
    }

    /** Dahlberg's formula for duplicates, written out. */
    @Property(tries = 200)
    void technicalErrorOfDuplicatesIsDahlbergs(@ForAll("pairs") List<List<Double>> pairs) {
        double squares = pairs.stream()
                .mapToDouble(row -> (row.get(0) - row.get(1)) * (row.get(0) - row.get(1)))
                .sum();
        assertThat(TechnicalError.of(RatingTable.of(pairs)).value())
                .isCloseTo(Math.sqrt(squares / (2 * pairs.size())), within(1e-9));
    }

    @Property(tries = 200)
    void correlationsAreAtMostOneAndIgnoreUnitAndOrigin(@ForAll("threes") List<List<Double>> rows) {
        List<List<Double>> inOtherUnit = rows.stream()
                .map(row -> row.stream().map(x -> 4 * x + 32).toList())
                .toList();
        List<IntraclassCorrelation> one = IntraclassCorrelation.all(RatingTable.of(rows), 0.95);
        List<IntraclassCorrelation> other = IntraclassCorrelation.all(RatingTable.of(inOtherUnit), 0.95);
        for (int form = 0; form < one.size(); form++) {
            if (one.get(form).value().isPresent() && one.get(form).interval().isPresent()) {
                double value = one.get(form).value().getAsDouble();
                assertThat(value).isLessThanOrEqualTo(1);
                assertThat(other.get(form).value().orElseThrow())
                        .isCloseTo(value, within(1e-6 * Math.max(1, Math.abs(value))));
            }
        }
    }
}
