// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.agents;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

class AmountsExternalValuesTest {
    private static final AtomicInteger ROWS = new AtomicInteger();

    @ParameterizedTest
    @CsvFileSource(resources = "/external/dose_conversions.csv", useHeadersInDisplayName = true)
    void massIsVolumeTimesTenTimesThePercentage(String percent, String volumeMl, String massMg) {
        assertThat(Mass.in(Volume.ofMl(volumeMl), Concentration.percent(percent)))
                .isEqualTo(Mass.ofMg(massMg));
        ROWS.incrementAndGet();
    }

    @ParameterizedTest
    @CsvFileSource(resources = "/external/dose_limits.csv", useHeadersInDisplayName = true)
    void theSmallerLimitCounts(String mgPerKg, String absoluteMg, String weightKg, String limitMg) {
        FormularyRow.Limit limit = new FormularyRow.Limit(
                Optional.of(new BigDecimal(mgPerKg)),
                Optional.of(Mass.ofMg(absoluteMg)),
                WeightBasis.ACTUAL,
                Optional.empty(),
                OptionalInt.empty());
        Patient patient = new Patient(
                Optional.of(new Weight(new BigDecimal(weightKg), Weight.Source.MEASURED)),
                Optional.empty(),
                Optional.empty(),
                OptionalInt.empty());
        assertThat(limit.of(patient)).contains(Mass.ofMg(limitMg));
        ROWS.incrementAndGet();
    }

    @AfterAll
    static void everyRowWasRead() {
        assertThat(ROWS.get()).isEqualTo(13);
    }

    /** 1 : 200 000 is 5 and 1 : 100 000 is 10 micrograms/mL: concentration table of US labels (read). */
    @Test
    void epinephrineAsLabelled() {
        assertThat(Concentration.oneIn(200_000)).isEqualTo(Concentration.microgramsPerMl("5"));
        assertThat(Concentration.oneIn(100_000)).isEqualTo(Concentration.microgramsPerMl("10"));
    }

    @Test
    void tenMillilitresOfHalfPerCentAndOfTwoPerCentDiluteEachOther() {
        Agent half = new Agent("bupivacaine", Basis.SALT, Concentration.percent("0.5"), List.of());
        Agent two = new Agent("lidocaine", Basis.SALT, Concentration.percent("2"), List.of());
        Mixture mixture = Mixture.of(
                List.of(new Mixture.Portion(half, Volume.ofMl("10")), new Mixture.Portion(two, Volume.ofMl("10"))));
        assertThat(mixture.volume()).isEqualTo(Volume.ofMl("20"));
        assertThat(mixture.contents())
                .extracting(Mixture.Content::concentration)
                .containsExactly(Concentration.mgPerMl("2.5"), Concentration.mgPerMl("10"));
        assertThat(mixture.contents())
                .extracting(Mixture.Content::mass)
                .containsExactly(Mass.ofMg("50"), Mass.ofMg("200"));
    }
}
