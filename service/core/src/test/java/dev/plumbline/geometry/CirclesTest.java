// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/** 3-4-5 triangles on squared paper. */
class CirclesTest {
    private static void at(Spot spot, double u, double w) {
        assertThat(spot.u()).isCloseTo(u, within(1e-9));
        assertThat(spot.w()).isCloseTo(w, within(1e-9));
    }

    private static double[] line(Spot direction, double radius) {
        return Circles.lineCrossings(new Spot(0, 0), direction, new Spot(5, 3), radius);
    }

    @Test
    void aLineCrossesACircleTwiceTouchesOrMissesIt() {
        assertThat(line(new Spot(1, 0), 5)).containsExactly(new double[] {1, 9}, within(1e-9));
        assertThat(line(new Spot(2, 0), 5)).containsExactly(new double[] {0.5, 4.5}, within(1e-9));
        assertThat(line(new Spot(0, 1), 13)).containsExactly(new double[] {-9, 15}, within(1e-9));
        assertThat(line(new Spot(1, 0), 3)).containsExactly(new double[] {5, 5}, within(1e-9));
        assertThat(line(new Spot(1, 0), 3 - 1e-13)).hasSize(2);
        assertThat(line(new Spot(1, 0), 3 - 1e-9)).isEmpty();
        assertThat(line(new Spot(1, 0), 2)).isEmpty();
        assertThat(line(new Spot(0, 0), 5)).isEmpty();
    }

    @Test
    void twoCirclesCrossInTwoPoints() {
        List<Spot> equal = Circles.crossings(new Spot(0, 0), 5, new Spot(8, 0), 5);
        at(equal.get(0), 4, 3);
        at(equal.get(1), 4, -3);
        List<Spot> unequal = Circles.crossings(new Spot(1, 2), 5, new Spot(1, 8), Math.sqrt(13));
        at(unequal.get(0), -2, 6);
        at(unequal.get(1), 4, 6);
    }

    @Test
    void circlesTouchWithinRounding() {
        at(Circles.crossings(new Spot(0, 0), 3, new Spot(8, 0), 5).get(0), 3, 0);
        assertThat(Circles.crossings(new Spot(0, 0), 3 - 1e-13, new Spot(8, 0), 5))
                .hasSize(2);
        assertThat(Circles.crossings(new Spot(0, 0), 3 - 1e-9, new Spot(8, 0), 5))
                .isEmpty();
        assertThat(Circles.crossings(new Spot(0, 0), 10, new Spot(5, 0), 1)).isEmpty();
        assertThat(Circles.crossings(new Spot(0, 0), 5, new Spot(0, 0), 5)).isEmpty();
    }

    @Test
    void theTangentsFromAPointMakeARightAngleWithTheRadius() {
        List<Spot> tangents = Circles.tangents(new Spot(2, 1), new Spot(7, 1), 3);
        at(tangents.get(0), 4, 3);
        at(tangents.get(1), 4, -3);
        List<Spot> upright = Circles.tangents(new Spot(2, 1), new Spot(2, 6), 3);
        at(upright.get(0), -3, 4);
        at(upright.get(1), 3, 4);
        List<Spot> onIt = Circles.tangents(new Spot(0, 0), new Spot(5, 0), 5);
        at(onIt.get(0), 0, 5);
        at(onIt.get(1), 0, -5);
        assertThat(Circles.tangents(new Spot(0, 0), new Spot(5, 0), 6)).isEmpty();
        assertThat(Circles.tangents(new Spot(5, 0), new Spot(5, 0), 0)).isEmpty();
        at(Circles.tangents(new Spot(0, 0), new Spot(5, 0), 0).get(0), 5, 0);
    }
}
