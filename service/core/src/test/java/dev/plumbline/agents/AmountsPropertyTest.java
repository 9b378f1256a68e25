// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.agents;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.BigRange;
import net.jqwik.api.constraints.Scale;

class AmountsPropertyTest {
    private static Agent agent(String drug, BigDecimal mgPerMl) {
        return new Agent(drug, Basis.SALT, new Concentration(mgPerMl), List.of());
    }

    /** What goes into a syringe is in it, and comes out of it again. */
    @Property(tries = 300)
    void mixingLosesNothing(
            @ForAll @BigRange(min = "0.01", max = "60") @Scale(2) BigDecimal oneMl,
            @ForAll @BigRange(min = "0.01", max = "60") @Scale(2) BigDecimal otherMl,
            @ForAll @BigRange(min = "0.01", max = "40") @Scale(2) BigDecimal oneMgPerMl,
            @ForAll @BigRange(min = "0.01", max = "40") @Scale(2) BigDecimal otherMgPerMl) {
        Mixture mixture = Mixture.of(List.of(
                new Mixture.Portion(agent("one", oneMgPerMl), new Volume(oneMl)),
                new Mixture.Portion(agent("other", otherMgPerMl), new Volume(otherMl))));
        for (Mixture.Content content : mixture.contents()) {
            assertThat(mixture.massIn(content, mixture.volume())).isEqualTo(content.mass());
        }
        assertThat(mixture.content("one").orElseThrow().mass().mg()).isEqualByComparingTo(oneMl.multiply(oneMgPerMl));
        assertThat(mixture.content("one").orElseThrow().concentration().mgPerMl())
                .isLessThan(oneMgPerMl);
    }

    @Property(tries = 300)
    void theOrderOfTheSyringeDoesNotMatter(
            @ForAll @BigRange(min = "0.1", max = "60") @Scale(1) BigDecimal oneMl,
            @ForAll @BigRange(min = "0.1", max = "60") @Scale(1) BigDecimal otherMl) {
        Mixture.Portion one = new Mixture.Portion(agent("one", BigDecimal.valueOf(5)), new Volume(oneMl));
        Mixture.Portion other = new Mixture.Portion(agent("other", BigDecimal.valueOf(20)), new Volume(otherMl));
        assertThat(Mixture.of(List.of(one, other)).contents())
                .containsExactlyInAnyOrderElementsOf(
                        Mixture.of(List.of(other, one)).contents());
    }
}
