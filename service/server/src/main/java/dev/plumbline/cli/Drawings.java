// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import dev.plumbline.deviation.Comparison;
import dev.plumbline.document.CaseInputs;
import dev.plumbline.drawing.PlanDrawing;
import dev.plumbline.drawing.RasterDrawing;
import dev.plumbline.drawing.Scene;
import dev.plumbline.drawing.SvgDrawing;
import dev.plumbline.observation.ObservationInput;
import dev.plumbline.record.FrameRef;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import picocli.CommandLine.Option;

/** The options by which a command also draws its answer. */
final class Drawings {
    @Option(names = "--svg", paramLabel = "OUT", description = "Draw the answer as SVG into this file.")
    private Optional<Path> svg = Optional.empty();

    @Option(names = "--png", paramLabel = "OUT", description = "Draw the answer as PNG into this file.")
    private Optional<Path> png = Optional.empty();

    /** The plan on its frame. */
    void plan(CaseFiles.Loaded loaded, Comparison comparison) {
        draw(
                PlanDrawing.of(loaded.inputs().plan(), comparison),
                loaded,
                loaded.document().frame(),
                0);
    }

    /** Each observation on its own frame beside the plan; the plan alone where there is none. */
    void comparison(CaseFiles.Loaded loaded, Comparison comparison) {
        CaseInputs inputs = loaded.inputs();
        List<ObservationInput> observed = inputs.observations();
        if (observed.isEmpty()) {
            plan(loaded, comparison);
        }
        for (int i = 0; i < observed.size(); i++) {
            Scene scene = PlanDrawing.ofObservation(observed.get(i), inputs.plan(), comparison, i);
            draw(scene, loaded, loaded.document().observations().get(i).frame(), i);
        }
    }

    private void draw(Scene scene, CaseFiles.Loaded loaded, FrameRef frame, int index) {
        if (svg.isEmpty() && png.isEmpty()) {
            return;
        }
        Optional<BufferedImage> image = loaded.frames().image(frame);
        svg.ifPresent(path -> ProductFiles.write(
                numbered(path, index), SvgDrawing.text(scene, image).getBytes(StandardCharsets.UTF_8)));
        png.ifPresent(path -> ProductFiles.write(numbered(path, index), png(RasterDrawing.image(scene, image))));
    }

    /** The first drawing has the name that was given, the next ones {@code -2}, {@code -3} before the extension. */
    static Path numbered(Path path, int index) {
        if (index == 0) {
            return path;
        }
        String name = String.valueOf(path.getFileName());
        int dot = name.lastIndexOf('.');
        String number = "-" + (index + 1);
        return path.resolveSibling(dot > 0 ? name.substring(0, dot) + number + name.substring(dot) : name + number);
    }

    static byte[] png(BufferedImage image) {
        try {
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            ImageIO.write(image, "png", bytes);
            return bytes.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
