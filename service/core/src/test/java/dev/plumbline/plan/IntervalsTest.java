// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.plumbline.plan.InPlanePlan.Interval;
import java.util.List;
import org.junit.jupiter.api.Test;

class IntervalsTest {
    private static final Intervals TWO = new Intervals(List.of(new Interval(10, 20), new Interval(30, 40)));

    @Test
    void holdsItsBoundsAndWhatRoundingMakesOfThem() {
        for (double held : new double[] {10, 15, 20, 30, 40, 10 - 5e-10, 20 + 5e-10}) {
            assertThat(TWO.holds(held)).as("%s", held).isTrue();
        }
        for (double apart : new double[] {9.99, 20.01, 25, 29.99, 40.01}) {
            assertThat(TWO.holds(apart)).as("%s", apart).isFalse();
        }
    }

    @Test
    void theNextMemberIsTheEntryItselfOrTheStartOfTheNextPart() {
        assertThat(TWO.nextFrom(5)).hasValue(10);
        assertThat(TWO.nextFrom(15)).hasValue(15);
        assertThat(TWO.nextFrom(20 + 5e-10)).hasValue(20 + 5e-10);
        assertThat(TWO.nextFrom(25)).hasValue(30);
        assertThat(TWO.nextFrom(41)).isEmpty();
    }

    @Test
    void theLastMemberIsTheEntryItselfOrTheEndOfThePartBefore() {
        assertThat(TWO.lastUpTo(45)).hasValue(40);
        assertThat(TWO.lastUpTo(35)).hasValue(35);
        assertThat(TWO.lastUpTo(30 - 5e-10)).hasValue(30 - 5e-10);
        assertThat(TWO.lastUpTo(25)).hasValue(20);
        assertThat(TWO.lastUpTo(9)).isEmpty();
    }

    @Test
    void boundsThatCrossByRoundingAreOnePoint() {
        assertThat(Intervals.of(10, 10 - 5e-10).parts()).containsExactly(new Interval(10, 10));
        assertThat(Intervals.of(10, 9.99).isEmpty()).isTrue();
        assertThat(Intervals.of(9, 10).parts()).containsExactly(new Interval(9, 10));
    }

    @Test
    void whatTwoSetsShareMayBeASinglePoint() {
        assertThat(TWO.and(Intervals.of(15, 35)).parts()).containsExactly(new Interval(15, 20), new Interval(30, 35));
        assertThat(TWO.and(Intervals.of(20, 30)).parts()).containsExactly(new Interval(20, 20), new Interval(30, 30));
        assertThat(TWO.and(Intervals.of(21, 29)).isEmpty()).isTrue();
        assertThat(TWO.isEmpty()).isFalse();
        assertThat(TWO.least()).isEqualTo(10);
        assertThat(TWO.greatest()).isEqualTo(40);
    }

    /** Allowed are [1, 2] and the point 4, where two forbidden pieces meet. */
    @Test
    void piecesJoinAndPointsBetweenForbiddenOnesStayPoints() {
        Intervals found = Intervals.ofPieces(
                new double[] {0, 1, 1.5, 2, 4, 5}, entry -> (1 <= entry && entry <= 2) || entry == 4);
        assertThat(found.parts()).containsExactly(new Interval(1, 2), new Interval(4, 4));
        assertThat(Intervals.ofPieces(new double[] {3}, entry -> true).parts()).containsExactly(new Interval(3, 3));
        assertThat(Intervals.ofPieces(new double[] {3, 6}, entry -> true).parts())
                .containsExactly(new Interval(3, 6));
        assertThat(Intervals.ofPieces(new double[] {3, 6}, entry -> false).isEmpty())
                .isTrue();
    }

    @Test
    void aConditionIsCutWhereItChanges() {
        Intervals found = Roots.allowed(entry -> entry <= 2.3 || 7 <= entry, 1, 10);
        assertThat(found.parts()).hasSize(2);
        assertThat(found.least()).isEqualTo(1);
        assertThat(found.parts().get(0).high()).isEqualTo(2.3);
        assertThat(found.parts().get(1)).isEqualTo(new Interval(7, 10));
        assertThat(Roots.allowed(entry -> false, 0, 10).isEmpty()).isTrue();
        assertThat(Roots.allowed(entry -> true, 4, 4).parts()).containsExactly(new Interval(4, 4));
    }

    /** Tents with their tops at 13.37 and, higher, at 36.2; and one whose top lies on the end of a part. */
    @Test
    void theHighestPointIsFoundInAnyPart() {
        assertThat(Farthest.from(TWO, entry -> entry < 25 ? -Math.abs(entry - 13.37) : 1 - Math.abs(entry - 36.2)))
                .isCloseTo(36.2, within(1e-6));
        assertThat(Farthest.from(TWO, entry -> entry < 25 ? 2 - Math.abs(entry - 13.37) : 1 - Math.abs(entry - 36.2)))
                .isCloseTo(13.37, within(1e-6));
        assertThat(Farthest.from(TWO, entry -> entry)).isCloseTo(40, within(1e-6));
        assertThat(Farthest.from(TWO, entry -> -entry)).isCloseTo(10, within(1e-6));
        assertThat(Farthest.from(Intervals.of(7, 7), entry -> entry)).isEqualTo(7);
    }
}
