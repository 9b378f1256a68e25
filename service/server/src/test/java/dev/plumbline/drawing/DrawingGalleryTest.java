// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Draws every kind of scene in every way, for people to look at: target/drawings. */
class DrawingGalleryTest {
    private static final Path OUT = Path.of("target", "drawings");

    static Stream<Map.Entry<String, Scene>> each() {
        return Gallery.scenes().entrySet().stream();
    }

    @ParameterizedTest
    @MethodSource("each")
    void drawsEveryKindOfSceneInEveryWay(Map.Entry<String, Scene> entry) throws IOException {
        Scene scene = entry.getValue();
        write(entry.getKey() + "-alone", scene, Optional.empty());
        BufferedImage dark = Background.speckle(scene.columns(), scene.rows(), 45);
        write(entry.getKey() + "-dark", scene, Optional.of(dark));
    }

    @Test
    void drawsOverTheBrightestSpeckle() throws IOException {
        for (String name : List.of("hazards", "observed", "proposed")) {
            write(name + "-bright", Gallery.scene(name), Optional.of(Background.speckle(640, 640, 170)));
        }
    }

    @Test
    void drawsOverSampleFrames() throws IOException {
        for (SampleDrawings drawings : List.of(SampleDrawings.inPlane(), SampleDrawings.outOfPlane())) {
            String name = drawings.plan().title().endsWith("in-plane") ? "sample-in-plane" : "sample-out-of-plane";
            write(name + "-plan", drawings.plan(), Optional.of(drawings.planned()));
            write(name + "-observed", drawings.observation(), Optional.of(drawings.observed()));
        }
    }

    private static void write(String name, Scene scene, Optional<BufferedImage> frame) throws IOException {
        Files.createDirectories(OUT);
        BufferedImage image = RasterDrawing.image(scene, frame);
        assertThat(image.getType()).isEqualTo(BufferedImage.TYPE_INT_RGB);
        assertThat(ImageIO.write(image, "png", OUT.resolve(name + ".png").toFile()))
                .isTrue();
        Files.writeString(OUT.resolve(name + ".svg"), SvgDrawing.text(scene, frame));
        grey(name, image);
    }

    /** As a black-and-white printer would show it. */
    private static void grey(String name, BufferedImage image) throws IOException {
        BufferedImage grey = new BufferedImage(image.getWidth(), image.getHeight(), BufferedImage.TYPE_BYTE_GRAY);
        grey.createGraphics().drawImage(image, 0, 0, null);
        assertThat(ImageIO.write(grey, "png", OUT.resolve(name + "-grey.png").toFile()))
                .isTrue();
    }
}
