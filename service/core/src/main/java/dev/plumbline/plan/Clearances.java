// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import dev.plumbline.geometry.Inputs;
import dev.plumbline.geometry.PointMm;
import dev.plumbline.geometry.Reading;
import dev.plumbline.geometry.Reason;
import dev.plumbline.geometry.Spot;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.RealFieldElement;

/** How near a path comes to the marked structures; negative where it crosses one. */
final class Clearances {
    private Clearances() {}

    /** Of path and extension from the nearest hazard; empty without hazards. */
    static <T extends RealFieldElement<T>> Optional<T> least(InPlanePath<T> path) {
        List<MeasuredObstacle<T>> hazards = path.scene().obstacles().hazards();
        if (hazards.isEmpty()) {
            return Optional.empty();
        }
        PointMm<T> beyond = path.beyond();
        Spot from = MeasuredObstacle.spot(path.entry());
        Spot to = MeasuredObstacle.spot(beyond);
        return hazards.stream()
                .min(Comparator.comparingDouble(hazard -> hazard.nominal().clearance(from, to)))
                .map(hazard -> hazard.clearance(path.entry(), beyond));
    }

    /** Hazards with the extension counted in, nerves without it. */
    static <T extends RealFieldElement<T>> InPlanePlan.Clearances of(InPlanePath<T> path, Inputs<T> inputs) {
        PointMm<T> beyond = path.beyond();
        PointMm<T> target = path.scene().target();
        return new InPlanePlan.Clearances(
                path.scene().obstacles().hazards().stream()
                        .map(hazard -> new Clearance(
                                hazard.nominal().name(),
                                reading(hazard.clearance(path.entry(), beyond), inputs),
                                reading(hazard.clearance(target, beyond), inputs),
                                limitedByTarget(hazard, path.scene())))
                        .toList(),
                path.scene().obstacles().nerves().stream()
                        .map(nerve -> new Clearance(
                                nerve.nominal().name(),
                                reading(nerve.clearance(path.entry(), target), inputs),
                                reading(nerve.clearance(target, beyond), inputs),
                                false))
                        .toList());
    }

    /** With a reason in place of every distance. */
    static <T extends RealFieldElement<T>> InPlanePlan.Clearances without(InPlaneScene<T> scene, Reason why) {
        return new InPlanePlan.Clearances(
                scene.obstacles().hazards().stream()
                        .map(hazard -> unknown(hazard, limitedByTarget(hazard, scene), why))
                        .toList(),
                scene.obstacles().nerves().stream()
                        .map(nerve -> unknown(nerve, false, why))
                        .toList());
    }

    private static <T extends RealFieldElement<T>> Clearance unknown(
            MeasuredObstacle<T> obstacle, boolean limited, Reason why) {
        return new Clearance(obstacle.nominal().name(), new Reading.NotSeen(why), new Reading.NotSeen(why), limited);
    }

    private static <T extends RealFieldElement<T>> boolean limitedByTarget(
            MeasuredObstacle<T> hazard, InPlaneScene<T> scene) {
        Spot target = scene.targetSpot();
        return hazard.nominal().clearance(target, target)
                < scene.marginOf(hazard.nominal().name());
    }

    private static <T extends RealFieldElement<T>> Reading reading(T distance, Inputs<T> inputs) {
        return new Reading.Seen(distance.getReal() + 0.0, inputs.standardUncertainty(distance));
    }
}
