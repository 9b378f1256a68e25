// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

import dev.plumbline.deviation.Comparison;
import dev.plumbline.geometry.PixelSize;
import dev.plumbline.geometry.Shape;
import dev.plumbline.geometry.SkinBeyondProbe;
import dev.plumbline.observation.ObservationInput;
import dev.plumbline.plan.Hazard;
import dev.plumbline.plan.PlanInput;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** One scene of every kind there is, by name. */
final class Gallery {
    private static final DrawnCase SQUARE = DrawnCase.SQUARE;
    private static final DrawnCase NARROW = DrawnCase.linear(300, 700, new PixelSize(0.085, 0.085), 30, 25);
    private static final DrawnCase FLAT = DrawnCase.linear(800, 400, new PixelSize(0.05, 0.1), 20, 38);

    private static final DrawnCase TILTED = DrawnCase.linear(640, 640, new PixelSize(0.059375, 0.059375), 110, 38)
            .tilted(12);

    private static final SkinBeyondProbe LIMB = new SkinBeyondProbe.Round(60);
    private static final DrawnCase CURVED = DrawnCase.linear(700, 600, new PixelSize(0.14, 0.14), 60, 58);

    private Gallery() {}

    static Scene scene(String name) {
        return Optional.ofNullable(scenes().get(name)).orElseThrow();
    }

    static Map<String, Scene> scenes() {
        Map<String, Scene> scenes = new LinkedHashMap<>();
        scenes.put("plan", plan(SQUARE.input(19, DrawnCase.entry(29))));
        scenes.put("proposed", plan(SQUARE.input(19, Optional.empty())));
        scenes.put("hazards", plan(SQUARE, 19, 29));
        scenes.put("infeasible", infeasible());
        scenes.put("no-path", plan(DrawnCase.withNeedle(SQUARE.input(34, Optional.empty()), 35)));
        scenes.put("observed", observed(SQUARE, 29, 26, true));
        scenes.put("unconfirmed", observed(SQUARE, 29, 30.5, false));
        scenes.put("tilted", observed(TILTED, 29, 26, true));
        scenes.put("from-left", observed(SQUARE.fromLeft(), 29, 33, true));
        scenes.put("round-limb", plan(DrawnCase.withSkin(SQUARE.input(19, DrawnCase.entry(29)), LIMB)));
        scenes.put("curved", plan(DrawnCase.curved(CURVED.input(45, Optional.empty()), 60)));
        scenes.put("narrow", plan(NARROW.input(38, DrawnCase.entry(60))));
        scenes.put("cut", plan(NARROW.input(38, DrawnCase.entry(160))));
        scenes.put("small", observed(DrawnCase.linear(160, 120, new PixelSize(0.25, 0.25), 6, 38), 29, 26, true));
        scenes.put("anisotropic", plan(FLAT, 19, 29));
        scenes.put("anisotropic-observed", observed(FLAT, 29, 26, true));
        PlanInput across = SQUARE.outOfPlane().input(20, DrawnCase.puncture(20));
        scenes.put("out-of-plane", plan(across));
        ObservationInput dot = SQUARE.outOfPlane().dot(SQUARE.at(1.5, 22.5), 22);
        scenes.put(
                "out-of-plane-observed",
                PlanDrawing.ofObservation(dot, across, Comparison.of(across, List.of(dot)), 0));
        return scenes;
    }

    private static Scene plan(PlanInput input) {
        return PlanDrawing.of(input, DrawnCase.planned(input));
    }

    private static Scene plan(DrawnCase frame, double depth, double entry) {
        return plan(DrawnCase.with(frame.input(depth, DrawnCase.entry(entry)), frame.nerves(depth), frame.hazards()));
    }

    /** The artery lies on the way and the needle is short. */
    private static Scene infeasible() {
        Hazard inTheWay =
                new Hazard("artery", Hazard.Kind.ARTERY, OptionalDouble.of(2), new Shape.Disc(SQUARE.at(8, 13), 2.5));
        PlanInput input = DrawnCase.with(SQUARE.input(19, DrawnCase.entry(29)), SQUARE.nerves(19), List.of(inTheWay));
        return plan(DrawnCase.withNeedle(input, 40));
    }

    private static Scene observed(DrawnCase frame, double planEntry, double entry, boolean endIsTip) {
        PlanInput input =
                DrawnCase.with(frame.input(19, DrawnCase.entry(planEntry)), frame.nerves(19), frame.hazards());
        ObservationInput seen = frame.observed(entry, frame.at(1.2, 20.4), endIsTip);
        return PlanDrawing.ofObservation(seen, input, Comparison.of(input, List.of(seen)), 0);
    }
}
