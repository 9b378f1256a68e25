// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.deviation.Comparison;
import dev.plumbline.geometry.PixelSize;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.observation.ObservationInput;
import dev.plumbline.plan.InPlanePlan;
import dev.plumbline.plan.Limit;
import dev.plumbline.plan.Plan;
import dev.plumbline.plan.PlanInput;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Draws every kind of scene in every way, for people to look at (target/drawings), and checks what a machine can see. */
class DrawingGalleryTest {
    private static final Path OUT = Path.of("target", "drawings");

    static Map<String, Scene> scenes() {
        Map<String, Scene> scenes = new LinkedHashMap<>();
        HandMade square = HandMade.SQUARE;
        PlanInput plain = square.input(19, List.of(), List.of());
        scenes.put("plan", plan(plain, square.inPlane(19, 29, Plan.Source.STATED, List.of())));
        scenes.put("proposed", plan(plain, square.inPlane(19, 32.9, Plan.Source.PROPOSED, List.of())));
        PlanInput marked = square.input(19, square.nerves(19), square.hazards());
        scenes.put("hazards", plan(marked, square.inPlane(19, 29, Plan.Source.STATED, List.of())));
        List<Limit> binding = List.of(Limit.of(Limit.Kind.REACH), new Limit(Limit.Kind.HAZARD, Optional.of("artery")));
        scenes.put("infeasible", plan(marked, square.inPlane(19, 29, Plan.Source.STATED, binding)));
        scenes.put("observed", observed(square, marked, square.inPlane(19, 29, Plan.Source.STATED, List.of()), true));
        scenes.put(
                "unconfirmed", observed(square, plain, square.inPlane(19, 29, Plan.Source.STATED, List.of()), false));
        HandMade narrow = new HandMade(300, 700, new PixelSize(0.085, 0.085), 30, 25);
        scenes.put(
                "narrow",
                plan(narrow.input(38, List.of(), List.of()), narrow.inPlane(38, 60, Plan.Source.STATED, List.of())));
        scenes.put(
                "cut",
                plan(narrow.input(38, List.of(), List.of()), narrow.inPlane(38, 160, Plan.Source.STATED, List.of())));
        HandMade flat = new HandMade(800, 400, new PixelSize(0.05, 0.1), 20, 38);
        PlanInput flatInput = flat.input(19, flat.nerves(19), flat.hazards());
        scenes.put("anisotropic", plan(flatInput, flat.inPlane(19, 29, Plan.Source.STATED, List.of())));
        scenes.put(
                "anisotropic-observed",
                observed(flat, flatInput, flat.inPlane(19, 29, Plan.Source.STATED, List.of()), true));
        PlanInput across = square.outOfPlaneInput(20);
        scenes.put("out-of-plane", plan(across, square.outOfPlane(20, 20)));
        ObservationInput dot = square.observed(0, square.at(1.5, 22.5), false);
        Comparison compared = square.compared(square.outOfPlane(20, 20), dot, 0, square.at(0, 20));
        scenes.put("out-of-plane-observed", PlanDrawing.ofObservation(dot, across, compared, 0));
        return scenes;
    }

    private static Scene plan(PlanInput input, Plan plan) {
        return PlanDrawing.of(input, new Comparison(plan, List.of(), List.of()));
    }

    private static Scene observed(HandMade frame, PlanInput input, InPlanePlan plan, boolean tipIsTip) {
        PointPx tip = frame.at(1.2, 20.4);
        ObservationInput observed = frame.observed(26, tip, tipIsTip);
        Comparison compared =
                frame.compared(plan, observed, 26, plan.line().orElseThrow().entry());
        return PlanDrawing.ofObservation(observed, input, compared, 0);
    }

    static Stream<Map.Entry<String, Scene>> each() {
        return scenes().entrySet().stream();
    }

    @ParameterizedTest
    @MethodSource("each")
    void drawsEveryKindOfSceneInEveryWay(Map.Entry<String, Scene> entry) throws IOException {
        Files.createDirectories(OUT);
        Scene scene = entry.getValue();
        for (String ground : List.of("alone", "dark", "bright")) {
            Optional<BufferedImage> frame = switch (ground) {
                case "dark" -> Optional.of(Background.speckle(scene.columns(), scene.rows(), 45));
                case "bright" -> Optional.of(Background.speckle(scene.columns(), scene.rows(), 170));
                default -> Optional.empty();
            };
            String name = entry.getKey() + "-" + ground;
            BufferedImage image = RasterDrawing.image(scene, frame);
            assertThat(image.getType()).isEqualTo(BufferedImage.TYPE_INT_RGB);
            ImageIO.write(image, "png", OUT.resolve(name + ".png").toFile());
            ImageIO.write(grey(image), "png", OUT.resolve(name + "-grey.png").toFile());
            Files.writeString(OUT.resolve(name + ".svg"), SvgDrawing.text(scene, frame));
        }
    }

    private static BufferedImage grey(BufferedImage image) {
        BufferedImage grey = new BufferedImage(image.getWidth(), image.getHeight(), BufferedImage.TYPE_BYTE_GRAY);
        grey.createGraphics().drawImage(image, 0, 0, null);
        return grey;
    }
}
