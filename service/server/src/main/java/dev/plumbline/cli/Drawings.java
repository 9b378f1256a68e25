// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import dev.plumbline.deviation.Comparison;
import dev.plumbline.document.CaseInputs;
import dev.plumbline.drawing.PlanDrawing;
import dev.plumbline.drawing.RasterDrawing;
import dev.plumbline.drawing.Scene;
import dev.plumbline.drawing.SvgDrawing;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.FrameRef;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.imageio.ImageIO;
import picocli.CommandLine.Option;

/** The options by which a command also draws its answer. */
final class Drawings {
    @Option(names = "--svg", paramLabel = "OUT", description = "Draw the answer as SVG into this file.")
    private Optional<Path> svg = Optional.empty();

    @Option(names = "--png", paramLabel = "OUT", description = "Draw the answer as PNG into this file.")
    private Optional<Path> png = Optional.empty();

    /** Whether any drawing is asked for. */
    boolean any() {
        return svg.isPresent() || png.isPresent();
    }

    /** The plan on its frame. */
    void plan(CaseFiles.Loaded loaded, Comparison comparison) {
        draw(
                PlanDrawing.of(loaded.inputs().plan(), comparison),
                loaded,
                loaded.document().frame(),
                0);
    }

    /** The observations of each frame together on it, beside the plan; the plan alone where there is none. */
    void comparison(CaseFiles.Loaded loaded, Comparison comparison) {
        CaseInputs inputs = loaded.inputs();
        if (inputs.observations().isEmpty()) {
            plan(loaded, comparison);
        }
        int drawing = 0;
        for (List<Integer> indices : byFrame(loaded.document())) {
            List<PlanDrawing.Made> made = indices.stream()
                    .map(index -> new PlanDrawing.Made(inputs.observations().get(index), index))
                    .toList();
            Scene scene = PlanDrawing.ofObservations(made, inputs.plan(), comparison);
            draw(
                    scene,
                    loaded,
                    loaded.document().observations().get(indices.get(0)).frame(),
                    drawing);
            drawing++;
        }
    }

    /** Observations of one picture; a stated size and scale names none, so each of those stands alone. */
    private static Collection<List<Integer>> byFrame(CaseDocument document) {
        Map<Object, List<Integer>> byFrame = new LinkedHashMap<>();
        for (int i = 0; i < document.observations().size(); i++) {
            FrameRef frame = document.observations().get(i).frame();
            Object picture = frame instanceof FrameRef.Stated ? i : frame;
            byFrame.computeIfAbsent(picture, ref -> new ArrayList<>()).add(i);
        }
        return byFrame.values();
    }

    private void draw(Scene scene, CaseFiles.Loaded loaded, FrameRef frame, int index) {
        if (!any()) {
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
