// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.plumbline.problem.Refusal;
import org.junit.jupiter.api.Test;

class ProportionTest {
    @Test
    void refusesAShareOfNothing() {
        assertThatThrownBy(() -> new Proportion(0, 0)).isInstanceOf(Refusal.class);
    }

    @Test
    void refusesMoreThanAll() {
        assertThatThrownBy(() -> new Proportion(3, 2)).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> new Proportion(-1, 2)).isInstanceOf(Refusal.class);
    }

    @Test
    void refusesALevelThatIsNoProbability() {
        assertThatThrownBy(() -> new Proportion(1, 2).wilson(95)).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> new Proportion(1, 2).clopperPearson(0)).isInstanceOf(Refusal.class);
    }

    @Test
    void noneOfOneIsAnswered() {
        ConfidenceInterval exact = new Proportion(0, 1).clopperPearson(0.95);
        assertThat(exact.low()).isZero();
        assertThat(exact.high()).isCloseTo(0.975, within(1e-12));
    }

    @Test
    void endsAreExactlyNoneAndAll() {
        assertThat(new Proportion(0, 20).wilson(0.95).low()).isZero();
        assertThat(new Proportion(20, 20).wilson(0.95).high()).isEqualTo(1);
    }

    @Test
    void namesItsMethod() {
        assertThat(new Proportion(1, 2).wilson(0.95).method()).contains("Wilson", "no continuity correction");
        assertThat(new Proportion(1, 2).clopperPearson(0.95).method()).contains("Clopper-Pearson");
    }
}
