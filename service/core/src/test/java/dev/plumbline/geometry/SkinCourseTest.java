// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class SkinCourseTest {
    private static final SkinCourse FLAT = SkinCourse.of(Probe.NOTHING_STATED);
    /** From 19 mm on half a millimetre down for each millimetre along. */
    private static final SkinCourse DROP = new SkinCourse.Falling(19, 0.5);

    private static final SkinCourse LIMB = new SkinCourse.Round(60);

    private static void crosses(List<Double> found, double... expected) {
        double[] distinct = found.stream()
                .mapToDouble(Double::doubleValue)
                .sorted()
                .distinct()
                .toArray();
        assertThat(distinct).containsExactly(expected, within(1e-9));
    }

    private static double depth(SkinCourse skin, double u) {
        return skin.depthAt(Gradient.constant(u)).getReal();
    }

    @Test
    void theSkinLiesAsDeepAsItsModelSays() {
        assertThat(depth(FLAT, 100)).isZero();
        assertThat(depth(DROP, 19)).isZero();
        assertThat(depth(DROP, -30)).isZero();
        assertThat(depth(DROP, 29)).isCloseTo(5, within(1e-9));
        assertThat(depth(LIMB, 36)).isCloseTo(12, within(1e-9)); // 36-48-60
        assertThat(DROP.inclinationAt(Gradient.constant(19)).getReal()).isZero();
        assertThat(DROP.inclinationAt(Gradient.constant(20)).getReal()).isCloseTo(Math.atan(0.5), within(1e-12));
        assertThat(LIMB.inclinationAt(Gradient.constant(36)).getReal()).isCloseTo(Math.asin(0.6), within(1e-12));
        assertThat(LIMB.reachesTo(59.9)).isTrue();
        assertThat(LIMB.reachesTo(-59.9)).isTrue();
        assertThat(LIMB.reachesTo(60)).isFalse();
        assertThat(DROP.reachesTo(1000)).isTrue();
        assertThat(DROP.start()).isEqualTo(19);
        assertThat(LIMB.start()).isZero();
    }

    @Test
    void aCircleCrossesTheSkinWhereTheSkinIs() {
        crosses(FLAT.crossings(new Spot(10, 3), 5), 6, 14);
        crosses(FLAT.crossings(new Spot(10, 3), 2));
        crosses(DROP.crossings(new Spot(0, 0), 5), -5, 5);
        crosses(DROP.crossings(new Spot(29, 5), Math.sqrt(5)), 27, 31);
        crosses(DROP.crossings(new Spot(19, 0), Math.sqrt(5)), 19 - Math.sqrt(5), 21);
        crosses(DROP.crossings(new Spot(29, 0), 1));
        double u = Math.sqrt(144 - 1.44);
        crosses(LIMB.crossings(new Spot(0, 0), 12), -u, u);
        crosses(LIMB.crossings(new Spot(0, 120), 12));
    }

    @Test
    void aSegmentCrossesTheSkinWhereTheSkinIs() {
        crosses(FLAT.crossings(new Spot(10, -5), new Spot(20, 5)), 15);
        crosses(FLAT.crossings(new Spot(10, -5), new Spot(20, -1)));
        crosses(DROP.crossings(new Spot(0, -1), new Spot(4, 3)), 1);
        crosses(DROP.crossings(new Spot(29, 0), new Spot(29, 10)), 29);
        crosses(DROP.crossings(new Spot(25, 5), new Spot(35, 5)), 29);
        crosses(DROP.crossings(new Spot(29, 5), new Spot(29, 10)), 29);
        crosses(DROP.crossings(new Spot(29, 0), new Spot(29, 5)), 29);
        crosses(DROP.crossings(new Spot(29, -1), new Spot(29, 4)));
        crosses(DROP.crossings(new Spot(29, 6), new Spot(29, 9)));
        // Under the face the falling line is no skin, beyond it the level one is not.
        crosses(DROP.crossings(new Spot(9, -6), new Spot(9, -4)));
        crosses(DROP.crossings(new Spot(0, 0.5), new Spot(30, 0.5)), 20);
        crosses(LIMB.crossings(new Spot(0, -5), new Spot(0, 5)), 0);
        crosses(LIMB.crossings(new Spot(-60, 12), new Spot(60, 12)), -36, 36);
        crosses(LIMB.crossings(new Spot(0, 12), new Spot(60, 12)), 36);
        crosses(LIMB.crossings(new Spot(0, 115), new Spot(0, 125)));
    }

    private static PointMm<Gradient> point(double x, double y) {
        return new PointMm<>(Gradient.constant(x), Gradient.constant(y));
    }

    @Test
    void aLineLeavesTheTissueThroughTheSkin() {
        PointMm<Gradient> flat = FLAT.meets(point(0, 30), point(3, -2)).orElseThrow();
        assertThat(flat.x().getReal()).isCloseTo(45, within(1e-9));
        PointMm<Gradient> drop = DROP.meets(point(0, 30), point(29, -25)).orElseThrow();
        assertThat(drop.x().getReal()).isCloseTo(29, within(1e-9));
        assertThat(drop.y().getReal()).isCloseTo(5, within(1e-9));
        PointMm<Gradient> limb = LIMB.meets(point(0, 39), point(36, -27)).orElseThrow();
        assertThat(limb.x().getReal()).isCloseTo(36, within(1e-9));
        assertThat(limb.y().getReal()).isCloseTo(12, within(1e-9));
        assertThat(FLAT.meets(point(0, 30), point(1, 0))).isEmpty();
        // Level in the lower half of the limb: where it leaves no skin is described.
        assertThat(LIMB.meets(point(0, 70), point(1, 0))).isEmpty();
    }
}
