// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;

class BoxPropertyTest {
    private static final Box BOX = new Box(-2, -1, 3, 4);

    @Property
    void leavesTheBoxOnItsBorder(
            @ForAll @DoubleRange(min = -2, max = 3) double inX,
            @ForAll @DoubleRange(min = -1, max = 4) double inY,
            @ForAll @DoubleRange(min = -50, max = 50) double outX,
            @ForAll @DoubleRange(min = -50, max = 50) double outY) {
        Xy in = new Xy(inX, inY);
        Xy out = new Xy(outX, outY);
        if (BOX.holds(out)) {
            assertThat(BOX.exit(in, out)).isEmpty();
            return;
        }
        Xy border = in.towards(out, BOX.exit(in, out).orElseThrow());
        assertThat(BOX.grown(1e-9).holds(border)).isTrue();
        assertThat(BOX.grown(-1e-9).holds(border)).isFalse();
    }

    /** Against walking along the segment in small steps. */
    @Property
    void meetsASegmentExactlyWhenAPointOfItLiesInside(
            @ForAll @DoubleRange(min = -8, max = 8) double fromX,
            @ForAll @DoubleRange(min = -8, max = 8) double fromY,
            @ForAll @DoubleRange(min = -8, max = 8) double toX,
            @ForAll @DoubleRange(min = -8, max = 8) double toY) {
        Xy from = new Xy(fromX, fromY);
        Xy to = new Xy(toX, toY);
        boolean walkedIn = false;
        for (int step = 0; step <= 2000; step++) {
            walkedIn |= BOX.holds(from.towards(to, step / 2000.0));
        }
        if (walkedIn) {
            assertThat(BOX.grown(1e-9).meets(from, to)).isTrue();
        } else {
            assertThat(BOX.grown(-0.02).meets(from, to)).isFalse();
        }
    }
}
