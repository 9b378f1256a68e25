// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.plumbline.problem.Refusal;
import java.util.List;
import org.junit.jupiter.api.Test;

class AgreementTest {
    private static final RatingTable THREE_OBSERVERS =
            RatingTable.of(List.of(List.of(1.0, 2.0, 3.0), List.of(4.0, 5.0, 7.0), List.of(7.0, 9.0, 8.0)));

    @Test
    void refusesGapsAndNumbersThatAreNone() {
        assertThatThrownBy(() -> RatingTable.of(List.of(List.of(1.0, 2.0), List.of(1.0))))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("This row has 1 values where the first has 2.");
        assertThatThrownBy(() -> RatingTable.of(List.of(List.of(1.0, Double.NaN), List.of(1.0, 2.0))))
                .isInstanceOf(Refusal.class);
    }

    @Test
    void refusesOneSubjectOrOneObserver() {
        assertThatThrownBy(() -> RatingTable.of(List.of(List.of(1.0, 2.0)))).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> RatingTable.of(List.of(List.of(1.0), List.of(2.0))))
                .isInstanceOf(Refusal.class);
    }

    @Test
    void limitsAreForTwoObservers() {
        assertThatThrownBy(() -> BlandAltman.of(THREE_OBSERVERS, 2, 0.95)).isInstanceOf(Refusal.class);
        assertThat(ObserverAgreement.of(THREE_OBSERVERS, 0.95).limits()).isEmpty();
    }

    @Test
    void limitsNeedAMultiple() {
        RatingTable two = RatingTable.of(List.of(List.of(1.0, 2.0), List.of(4.0, 5.0)));
        assertThatThrownBy(() -> BlandAltman.of(two, 0, 0.95)).isInstanceOf(Refusal.class);
    }

    @Test
    void threeObserversStillGetTechnicalErrorAndSixNamedForms() {
        ObserverAgreement agreement = ObserverAgreement.of(THREE_OBSERVERS, 0.95);
        // Variances within: 1, 7/3, 1; mean 13/9.
        assertThat(agreement.technicalError().value()).isCloseTo(Math.sqrt(13.0 / 9), within(1e-12));
        assertThat(agreement.correlations())
                .extracting(icc -> icc.form().word())
                .containsExactly("ICC(1,1)", "ICC(2,1)", "ICC(3,1)", "ICC(1,k)", "ICC(2,k)", "ICC(3,k)");
    }

    @Test
    void noSpreadAtAllGivesNoCorrelation() {
        RatingTable same = RatingTable.of(List.of(List.of(3.0, 3.0), List.of(3.0, 3.0)));
        assertThat(IntraclassCorrelation.all(same, 0.95))
                .allSatisfy(icc -> assertThat(icc.value()).isEmpty());
    }

    @Test
    void roundingIsNoSpread() {
        RatingTable same =
                RatingTable.of(List.of(List.of(0.1, 0.1, 0.1), List.of(0.1, 0.1, 0.1), List.of(0.1, 0.1, 0.1)));
        assertThat(IntraclassCorrelation.all(same, 0.95))
                .allSatisfy(icc -> assertThat(icc.value()).isEmpty());
    }

    @Test
    void whereTheApproximationBreaksDownNoIntervalIsGiven() {
        RatingTable opposed =
                RatingTable.of(List.of(List.of(1.0, 9.0, 1.0), List.of(9.0, 1.0, 1.0), List.of(5.0, 5.0, 2.0)));
        assertThat(IntraclassCorrelation.of(opposed, IntraclassCorrelation.Form.RANDOM_SINGLE, 0.95)
                        .interval())
                .isEmpty();
        assertThat(IntraclassCorrelation.of(opposed, IntraclassCorrelation.Form.FIXED_SINGLE, 0.95)
                        .interval())
                .isPresent();
    }

    @Test
    void fullAgreementIsOneWithoutAnInterval() {
        RatingTable same = RatingTable.of(List.of(List.of(3.0, 3.0), List.of(5.0, 5.0)));
        assertThat(IntraclassCorrelation.all(same, 0.95)).allSatisfy(icc -> {
            assertThat(icc.value().orElseThrow()).isEqualTo(1);
            assertThat(icc.interval()).isEmpty();
        });
    }

    @Test
    void intervalsRunUpwards() {
        assertThatThrownBy(() -> new ConfidenceInterval(2, 1, 0.95, "any"))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new ConfidenceInterval(1, 2, 1, "any")).isInstanceOf(IllegalArgumentException.class);
        assertThat(new ConfidenceInterval(1, 2, 0.9, "any").holds(2)).isTrue();
        assertThat(new ConfidenceInterval(1, 2, 0.9, "any").holds(2.1)).isFalse();
    }
}
