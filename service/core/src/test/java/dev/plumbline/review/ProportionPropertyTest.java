// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.apache.commons.math3.distribution.BinomialDistribution;

class ProportionPropertyTest {
    private static final double LEVEL = 0.95;

    @Property(tries = 300)
    void intervalsHoldTheShareAndStayWithinZeroAndOne(
            @ForAll @IntRange(max = 400) int some, @ForAll @IntRange(min = 1, max = 400) int of) {
        Proportion proportion = new Proportion(Math.min(some, of), of);
        for (ConfidenceInterval interval :
                new ConfidenceInterval[] {proportion.wilson(LEVEL), proportion.clopperPearson(LEVEL)}) {
            assertThat(interval.low()).isBetween(0.0, proportion.share());
            assertThat(interval.high()).isBetween(proportion.share(), 1.0);
        }
    }

    @Property(tries = 200)
    void swappingSuccessAndFailureMirrorsTheInterval(
            @ForAll @IntRange(max = 200) int some, @ForAll @IntRange(min = 1, max = 200) int of) {
        int count = Math.min(some, of);
        ConfidenceInterval one = new Proportion(count, of).clopperPearson(LEVEL);
        ConfidenceInterval other = new Proportion(of - count, of).clopperPearson(LEVEL);
        assertThat(one.low()).isCloseTo(1 - other.high(), within(1e-10));
        assertThat(new Proportion(count, of).wilson(LEVEL).low())
                .isCloseTo(1 - new Proportion(of - count, of).wilson(LEVEL).high(), within(1e-12));
    }

    /** The definition: at the bounds the binomial tail holds exactly half of what the level leaves out. */
    @Property(tries = 100)
    void exactBoundsCutTheBinomialTails(
            @ForAll @IntRange(min = 1, max = 99) int count, @ForAll @IntRange(min = 100, max = 300) int of) {
        ConfidenceInterval exact = new Proportion(count, of).clopperPearson(LEVEL);
        double atLeast = 1 - new BinomialDistribution(null, of, exact.low()).cumulativeProbability(count - 1);
        double atMost = new BinomialDistribution(null, of, exact.high()).cumulativeProbability(count);
        assertThat(atLeast).isCloseTo(0.025, within(1e-9));
        assertThat(atMost).isCloseTo(0.025, within(1e-9));
    }
}
