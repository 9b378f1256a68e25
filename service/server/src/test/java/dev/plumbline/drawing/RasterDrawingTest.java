// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.plumbline.geometry.PixelSize;
import dev.plumbline.plan.PlanInput;
import java.awt.image.BufferedImage;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class RasterDrawingTest {
    private static final DrawnCase SQUARE = DrawnCase.SQUARE;

    private static Scene plan(DrawnCase frame) {
        PlanInput input = frame.input(19, DrawnCase.entry(29));
        return PlanDrawing.of(input, DrawnCase.planned(input));
    }

    @Test
    void leavesThePixelsOfTheFrameWhereNothingIsDrawn() {
        Scene scene = plan(SQUARE);
        BufferedImage frame = Background.speckle(640, 640, 90);
        BufferedImage image = RasterDrawing.image(scene, Optional.of(frame));
        Box canvas = Layout.of(scene, true).canvas();
        int left = (int) -Math.floor(canvas.minX());
        int top = (int) -Math.floor(canvas.minY());
        // below the target and left of it there is neither path nor label
        for (int row = 480; row < 640; row++) {
            for (int column = 20; column < 600; column++) {
                assertThat(image.getRGB(left + column, top + row)).isEqualTo(frame.getRGB(column, row));
            }
        }
    }

    @Test
    void drawsThePathInItsColourWithAHalo() {
        Scene scene = plan(SQUARE);
        BufferedImage frame = Background.speckle(640, 640, 170);
        BufferedImage image = RasterDrawing.image(scene, Optional.of(frame));
        Box canvas = Layout.of(scene, true).canvas();
        Xy middle = new Xy(
                SQUARE.at(8, 0).column(), SQUARE.at(0, 19 - 8 * 19 / 29.0).row());
        int x = (int) (middle.x() - Math.floor(canvas.minX()));
        int y = (int) (middle.y() - Math.floor(canvas.minY()));
        assertThat(image.getRGB(x, y) & 0xFFFFFF).isEqualTo(Ink.PLAN.rgb(Palette.OVER_FRAME));
        int beside = image.getRGB(x, y + 4) & 0xFF;
        assertThat(beside).isLessThan(frame.getRGB((int) middle.x(), (int) middle.y() + 4) & 0xFF);
    }

    @Test
    void enlargesASmallFrameAWholeNumberOfTimes() {
        Scene scene = plan(DrawnCase.linear(160, 120, new PixelSize(0.25, 0.25), 6, 38));
        Sheet sheet = Layout.of(scene, true);
        assertThat(sheet.scale()).isGreaterThan(1).isEqualTo(Math.rint(sheet.scale()));
    }

    @Test
    void drawsHugeStatedFramesAloneAtAnOrdinarySize() {
        Scene scene = plan(DrawnCase.linear(64_000, 64_000, new PixelSize(0.00059375, 0.00059375), 4_000, 38));
        BufferedImage image = RasterDrawing.image(scene, Optional.empty());
        assertThat(image.getWidth()).isBetween(800, 3000);
        assertThat(image.getHeight()).isBetween(600, 3000);
    }

    @Test
    void givesTheSamePixelsForTheSameScene() {
        Scene scene = plan(SQUARE);
        Optional<BufferedImage> frame = Optional.of(Background.speckle(640, 640, 90));
        assertThat(pixels(RasterDrawing.image(plan(SQUARE), frame)))
                .isEqualTo(pixels(RasterDrawing.image(scene, frame)));
    }

    @Test
    void refusesAPictureOfAnotherSize() {
        Optional<BufferedImage> other = Optional.of(Background.plain(641, 640));
        assertThatThrownBy(() -> RasterDrawing.image(plan(SQUARE), other))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("641 x 640");
    }

    private static int[] pixels(BufferedImage image) {
        return image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth());
    }
}
