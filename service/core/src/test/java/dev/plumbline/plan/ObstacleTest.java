// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.plumbline.geometry.Spot;
import dev.plumbline.plan.Obstacle.Nearest;
import dev.plumbline.plan.Obstacle.Place;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Distances in the plane that can be read off squared paper. */
class ObstacleTest {
    private static final double[] SQUARE = {10, 10, 20, 10, 20, 20, 10, 20};
    /** Two legs that hang from a bar: the left one to 20, the right one to 40. */
    private static final double[] HOOK = {0, 0, 30, 0, 30, 40, 20, 40, 20, 10, 10, 10, 10, 20, 0, 20};

    private static List<Spot> spots(double... coordinates) {
        List<Spot> spots = new ArrayList<>();
        for (int i = 0; i < coordinates.length; i += 2) {
            spots.add(new Spot(coordinates[i], coordinates[i + 1]));
        }
        return spots;
    }

    private static Obstacle outline(double... coordinates) {
        return Obstacle.of("outline", spots(coordinates), 0);
    }

    private static Obstacle disc(double u, double w, double radius) {
        return Obstacle.of("disc", List.of(new Spot(u, w)), radius);
    }

    /** The same outline from every first corner, either way round. */
    private static List<Obstacle> everyWayRound(double... coordinates) {
        List<Obstacle> outlines = new ArrayList<>();
        for (int first = 0; first < coordinates.length / 2; first++) {
            List<Spot> corners = spots(coordinates);
            Collections.rotate(corners, first);
            outlines.add(Obstacle.of("outline", corners, 0));
            Collections.reverse(corners);
            outlines.add(Obstacle.of("outline", corners, 0));
        }
        return outlines;
    }

    private static Nearest nearest(Obstacle obstacle, double... path) {
        return obstacle.nearest(new Spot(path[0], path[1]), new Spot(path[2], path[3]));
    }

    /** From either end the same distance, as far as it is one. */
    private static void clears(Obstacle obstacle, double expected, double... path) {
        assertThat(nearest(obstacle, path).clearanceMm())
                .as("%s along the path", obstacle)
                .isCloseTo(expected, within(1e-9));
        assertThat(nearest(obstacle, path[2], path[3], path[0], path[1]).clearanceMm())
                .as("%s against the path", obstacle)
                .isCloseTo(expected, within(1e-9));
    }

    @Test
    void aDiscIsNearestBesideThePathOrAtOneOfItsEnds() {
        Obstacle disc = disc(5, 3, 2);
        assertThat(nearest(disc, 0, 0, 10, 0)).isEqualTo(new Nearest(Place.CORNER_BESIDE_PATH, 0, 1));
        assertThat(nearest(disc, 0, 3, 2, 3)).isEqualTo(new Nearest(Place.CORNER_AT_END, 0, 1));
        assertThat(nearest(disc, 9, 6, 20, 6)).isEqualTo(new Nearest(Place.CORNER_AT_START, 0, 3));
        assertThat(nearest(disc, 0, 3, 10, 3)).isEqualTo(new Nearest(Place.CORNER_BESIDE_PATH, 0, -2));
        clears(disc, 3, 9, 6, 20, 6);
        clears(disc, 3, 9, 6, 9, 6);
    }

    @Test
    void aDiscHoldsWhatLiesWithinItsRimByMoreThanRounding() {
        Obstacle disc = disc(5, 3, 2);
        assertThat(disc.holds(new Spot(5, 4.9))).isTrue();
        assertThat(disc.holds(new Spot(5, 5.1))).isFalse();
        assertThat(disc.holds(new Spot(7, 3))).isFalse();
        assertThat(disc.holds(new Spot(7 - 5e-10, 3))).isFalse();
    }

    @Test
    void anOutlineIsNearestAtACornerOrAtAnEdge() {
        Obstacle square = outline(SQUARE);
        assertThat(nearest(square, 8, 0, 8, 30).place()).isEqualTo(Place.CORNER_BESIDE_PATH);
        clears(square, 2, 8, 0, 8, 30);
        assertThat(nearest(square, 0, 15, 7, 15)).isEqualTo(new Nearest(Place.EDGE_AT_END, 3, 3));
        assertThat(nearest(square, 7, 15, 0, 15)).isEqualTo(new Nearest(Place.EDGE_AT_START, 3, 3));
        assertThat(nearest(square, 0, 0, 7, 6)).isEqualTo(new Nearest(Place.CORNER_AT_END, 0, 5));
        assertThat(nearest(square, 24, 23, 30, 40)).isEqualTo(new Nearest(Place.CORNER_AT_START, 2, 5));
    }

    @Test
    void aCornerGivenTwiceChangesNothing() {
        Obstacle square = outline(10, 10, 10, 10, 20, 10, 20, 20, 10, 20);
        clears(square, 3, 0, 15, 7, 15);
        clears(square, -3, 0, 13, 30, 13);
        assertThat(square.holds(new Spot(12, 15))).isTrue();
    }

    @Test
    void aPathThroughAnOutlineIsToMoveToTheNearerSide() {
        for (Obstacle square : everyWayRound(SQUARE)) {
            clears(square, -3, 0, 13, 30, 13);
            clears(square, -2, 0, 18, 30, 18);
            clears(square, -3, 13, 0, 13, 30);
            // Along the diagonal both other corners lie half a diagonal beside it.
            clears(square, -10 / Math.sqrt(2), 5, 5, 25, 25);
        }
        assertThat(nearest(outline(SQUARE), 0, 13, 30, 13).place()).isEqualTo(Place.CROSSED);
        assertThat(nearest(outline(SQUARE), 0, 13, 30, 13).corner()).isIn(0, 1);
        assertThat(nearest(outline(SQUARE), 0, 18, 30, 18).corner()).isIn(2, 3);
    }

    @Test
    void aPathThatEndsInsideHasToLeaveTheWholeOutline() {
        for (Obstacle square : everyWayRound(SQUARE)) {
            clears(square, -3, 0, 13, 15, 13);
            clears(square, -4, 16, 30, 16, 15);
        }
        // Out of the longer leg at 35: the whole hook lies to 35 on one side and to 5 on the other.
        for (Obstacle hook : everyWayRound(HOOK)) {
            clears(hook, -5, 25, 35, 50, 35);
            clears(hook, -15, 15, 5, 15, -10);
        }
    }

    @Test
    void aPathInsideIsAsDeepAsItsWayOut() {
        for (Obstacle square : everyWayRound(SQUARE)) {
            clears(square, -3, 14, 13, 16, 13);
            clears(square, -1, 14, 13, 11, 13);
        }
    }

    /** Only the part that is crossed has to be left: the left leg ends 5 mm farther, the right one 25 mm. */
    @Test
    void aPathThroughOneLegOfAHookMovesPastThatLeg() {
        for (Obstacle hook : everyWayRound(HOOK)) {
            clears(hook, -5, -5, 15, 15, 15);
            // Through both legs it has the bar on one side, the longer leg on the other.
            clears(hook, -15, -5, 15, 35, 15);
            clears(hook, -12, -5, 12, 35, 12);
            // Through the right leg alone the whole bar is on one side.
            clears(hook, -10, 15, 30, 35, 30);
        }
        // Upside down, so that the short leg ends on the path's other side.
        for (Obstacle hook : everyWayRound(0, 0, 30, 0, 30, -40, 20, -40, 20, -10, 10, -10, 10, -20, 0, -20)) {
            clears(hook, -5, -5, -15, 15, -15);
            clears(hook, -15, -5, -15, 35, -15);
        }
    }

    @Test
    void touchingIsNoCrossing() {
        for (Obstacle square : everyWayRound(SQUARE)) {
            clears(square, 0, 0, 10, 30, 10);
            clears(square, 0, 0, 20, 20, 0);
            clears(square, 0, 0, 15, 10, 15);
            assertThat(nearest(square, 0, 15, 10 + 5e-10, 15).clearanceMm()).isGreaterThan(-1e-8);
        }
    }

    @Test
    void keepsADistanceUpToIt() {
        Obstacle square = outline(SQUARE);
        Spot from = new Spot(0, 7);
        Spot to = new Spot(30, 7);
        assertThat(square.leaves(3, from, to)).isTrue();
        assertThat(square.leaves(3.001, from, to)).isFalse();
        Obstacle disc = disc(5, 3, 2);
        assertThat(disc.leaves(1, new Spot(0, 0), new Spot(10, 0))).isTrue();
        assertThat(disc.leaves(1.001, new Spot(0, 0), new Spot(10, 0))).isFalse();
        assertThat(disc.leaves(3, new Spot(9, 6), new Spot(9, 6))).isTrue();
        assertThat(disc.leaves(3.001, new Spot(9, 6), new Spot(9, 6))).isFalse();
    }

    /** The long side of the triangle runs from (13, 2) to (3, 22). */
    @Test
    void anOutlineHoldsWhatLiesInsideByMoreThanRounding() {
        for (Obstacle triangle : everyWayRound(3, 2, 13, 2, 3, 22)) {
            for (double[] inside : new double[][] {{7, 13}, {4, 19}, {3.5, 3}, {12, 3}}) {
                assertThat(triangle.holds(new Spot(inside[0], inside[1])))
                        .as("%s, %s", inside[0], inside[1])
                        .isTrue();
            }
            for (double[] outside : new double[][] {
                {7.6, 13}, {4.6, 19}, {2, 10}, {2.9, 3}, {12.6, 3}, {5, 1}, {5, 23}, {14, 2.5}, {8, 12}, {3, 10}
            }) {
                assertThat(triangle.holds(new Spot(outside[0], outside[1])))
                        .as("%s, %s", outside[0], outside[1])
                        .isFalse();
            }
        }
        assertThat(outline(HOOK).holds(new Spot(15, 15))).isFalse();
        assertThat(outline(HOOK).holds(new Spot(25, 35))).isTrue();
    }
}
