// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.geometry.PixelSize;
import dev.plumbline.geometry.PointPx;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class DrawnPathTest {
    private static final FrameGeometry FRAME =
            new FrameGeometry(100, 80, List.of(), Optional.empty(), Optional.empty(), "sample");

    @Test
    void keepsAPathThatLiesOnTheImage() {
        DrawnPath path =
                DrawnPath.of(new PointPx(100, 0), new PointPx(0, 80), FRAME).orElseThrow();
        assertThat(path.whole()).isTrue();
        assertThat(path.points()).containsExactly(new PointPx(100, 0), new PointPx(0, 80));
    }

    @Test
    void cutsAPathAtTheBorderItCrosses() {
        DrawnPath path =
                DrawnPath.of(new PointPx(150, 0), new PointPx(50, 40), FRAME).orElseThrow();
        assertThat(path.whole()).isFalse();
        assertThat(path.points()).containsExactly(new PointPx(100, 20), new PointPx(50, 40));
        assertThat(path.lengthMm(new PixelSize(0.2, 0.1))).isCloseTo(Math.hypot(10, 2), within(1e-12));
    }

    @Test
    void givesNothingForAPathBesideTheImage() {
        assertThat(DrawnPath.of(new PointPx(150, 10), new PointPx(120, 40), FRAME))
                .isEmpty();
        assertThat(DrawnPath.of(new PointPx(120, 10), new PointPx(120, 40), FRAME))
                .isEmpty();
        assertThat(DrawnPath.of(new PointPx(120, 10), new PointPx(100, 40), FRAME))
                .isEmpty();
    }

    @Test
    void staysOnTheGridThatGraphicDataHoldsExactly() {
        DrawnPath path = DrawnPath.of(new PointPx(133.3, 0.1), new PointPx(50, 40), FRAME)
                .orElseThrow();
        assertThat(path.from().row() * 64).isEqualTo(Math.rint(path.from().row() * 64));
        assertThat(FRAME.holds(path.from())).isTrue();
    }
}
