// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.plumbline.geometry.RepeatedMarks.Used;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class RepeatedMarksPropertyTest {
    @Provide
    Arbitrary<List<PointPx>> marks() {
        Arbitrary<Double> coordinate = Arbitraries.doubles().between(0, 640).ofScale(3);
        return Combinators.combine(coordinate, coordinate)
                .as(PointPx::new)
                .list()
                .ofMinSize(2)
                .ofMaxSize(12);
    }

    @Property(tries = 200)
    void movingEveryMarkMovesTheMeanAndLeavesTheSpread(
            @ForAll("marks") List<PointPx> marks, @ForAll @DoubleRange(min = -100, max = 100) double shift) {
        RepeatedMarks before = RepeatedMarks.byOnePerson(marks);
        RepeatedMarks after = RepeatedMarks.byOnePerson(marks.stream()
                .map(m -> new PointPx(m.column() + shift, m.row()))
                .toList());
        assertThat(after.mean().column()).isCloseTo(before.mean().column() + shift, within(1e-9));
        assertThat(after.onePx()).isCloseTo(before.onePx(), within(1e-9));
    }

    @Property(tries = 200)
    void theMeanIsNeverLessWellKnownThanOneMark(@ForAll("marks") List<PointPx> marks) {
        RepeatedMarks repeated = RepeatedMarks.byOnePerson(marks);
        assertThat(repeated.markPx(Used.MEAN_OF_MARKS)).isPositive().isLessThan(repeated.markPx(Used.ONE_MARK));
    }

    /** 20000 frames marked by 4 people 3 times each, between 1.5 px, within 1 px: what is found on average. */
    @Test
    void findsTheSpreadThatMarksWereDrawnWith() {
        Random random = new Random(20260105);
        double oneSquared = 0;
        double meanSquared = 0;
        int frames = 20_000;
        for (int frame = 0; frame < frames; frame++) {
            RepeatedMarks repeated = RepeatedMarks.byPersons(drawn(random));
            oneSquared += repeated.onePx() * repeated.onePx() / frames;
            meanSquared += repeated.meanPx() * repeated.meanPx() / frames;
        }
        assertThat(oneSquared).isCloseTo(1.5 * 1.5 + 1, within(0.05));
        assertThat(meanSquared).isCloseTo((1.5 * 1.5 + 1.0 / 3) / 4, within(0.01));
    }

    private static List<List<PointPx>> drawn(Random random) {
        List<List<PointPx>> all = new ArrayList<>();
        for (int person = 0; person < 4; person++) {
            double column = 300 + 1.5 * random.nextGaussian();
            double row = 200 + 1.5 * random.nextGaussian();
            List<PointPx> own = new ArrayList<>();
            for (int mark = 0; mark < 3; mark++) {
                own.add(new PointPx(column + random.nextGaussian(), row + random.nextGaussian()));
            }
            all.add(own);
        }
        return all;
    }
}
